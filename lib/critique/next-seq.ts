/** The next place in a thread. Two who take it at once meet the unique key, and one of them reads again. */
export const nextSeq = (entries: readonly { seq: number }[]): number =>
  Math.max(0, ...entries.map(({ seq }) => seq)) + 1;
