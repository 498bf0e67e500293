type Terms = {
  /** From when the round's time runs. */
  readonly opensAt: number;
  readonly dueAt: number | null;
  /** Another due instant for this member alone, set by an instructor. */
  readonly extendedTo: number | null;
  /** Percent of the round's time that this member has on top, by accommodation. */
  readonly moreTime: number;
};

/**
 * When the round is due for one member, in milliseconds since 1970 UTC; null: no date.
 * An extension and an accommodation do not add up: the later of the two holds.
 */
export function dueForMember({ opensAt, dueAt, extendedTo, moreTime }: Terms): number | null {
  if (dueAt === null) return null;
  const lengthened = dueAt + (Math.max(0, dueAt - opensAt) * moreTime) / 100;
  return Math.max(lengthened, extendedTo ?? dueAt);
}
