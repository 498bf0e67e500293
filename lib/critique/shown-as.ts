/** How a student is named to a marker: by the alias as long as names are hidden, and never by both. */
export function shownAs(who: { name: string | null; alias: string }, hidden: boolean): string {
  return hidden ? who.alias : (who.name ?? `Erased person ${who.alias}`);
}

/** What stands for a proof in an address: where names are hidden, the alias, since an id tells when it was made. */
export const tokenOf = (task: { proofId: string; alias: string }, hidden: boolean): string =>
  hidden ? task.alias : task.proofId;
