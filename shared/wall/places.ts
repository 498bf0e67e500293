/**
 * Keeps lines where they stand: those that are gone leave, new ones come after the last, among themselves in the order of
 * `keys` (which is by chance). Nothing that is being looked at moves.
 */
export function placed(before: readonly string[], keys: readonly string[]): string[] {
  const there = new Set(keys);
  const kept = before.filter((key) => there.has(key));
  const known = new Set(kept);
  return [...kept, ...keys.filter((key) => !known.has(key))];
}
