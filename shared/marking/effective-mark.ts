/**
 * Where the level that counts comes from.
 * `first`: only one marker looks at this. `agreed`: both gave it. `settled`: somebody settled it, with a reason.
 * `differs`: the two differ and nobody has settled it. `second-waits`: the second marker has not finished.
 * In the last two the first marker's level counts until there is more, and every page that shows it says so.
 */
export type MarkSource = 'first' | 'agreed' | 'settled' | 'differs' | 'second-waits';
export type EffectiveMark = { level: number | null; from: MarkSource };

/** The levels that were given for one criterion; null where none was, or where there is no such work. */
export type GivenLevels = { first: number | null; second: number | null; settled: number | null };

/** How far the second marking of a proof is: not wanted and not begun, under way, finished by both. */
export type SecondState = 'none' | 'waits' | 'done';

/** The level of one criterion that counts: the settled one, else the one both gave, else the first marker's. */
export function effectiveMark({ first, second, settled }: GivenLevels, state: SecondState): EffectiveMark {
  if (settled !== null) return { level: settled, from: 'settled' };
  if (state === 'none') return { level: first, from: 'first' };
  if (state === 'waits') return { level: first, from: 'second-waits' };
  // A criterion that was added after the second marker had finished was seen by one marker only.
  if (second === null) return { level: first, from: 'first' };
  return first === second ? { level: first, from: 'agreed' } : { level: first, from: 'differs' };
}
