import { weightedKappa } from '@/shared/stats/weighted-kappa';

/** One proof as two markers judged it by one criterion: indices of levels, lowest 0. */
export type Judged = { first: number; second: number };

export type Agreement = {
  /** Proofs that both have judged. */
  n: number;
  /** Shares from 0 to 1; null where n is 0. */
  exact: number | null;
  /** The same level or the one beside it. */
  adjacent: number | null;
  /** Quadratic weighted kappa (Cohen 1968); null where nothing can be said: no proof, or both always gave one and the same level. */
  kappa: number | null;
  /** Counts: row is the first marker's level, column the second's. */
  table: number[][];
};

/**
 * How far two markers agree by one criterion.
 * @throws RangeError for a level the criterion does not have.
 */
export function agreementOf(judged: readonly Judged[], levelCount: number): Agreement {
  const table = Array.from({ length: levelCount }, () => Array.from({ length: levelCount }, () => 0));
  for (const { first, second } of judged) {
    const row = table[first];
    if (!row || row[second] === undefined)
      throw new RangeError(`Levels ${first + 1} and ${second + 1} were given where there are ${levelCount}.`);
    row[second] += 1;
  }
  const n = judged.length;
  const share = (apart: number) =>
    n === 0 ? null : judged.filter(({ first, second }) => Math.abs(first - second) <= apart).length / n;
  return { n, exact: share(0), adjacent: share(1), kappa: n === 0 ? null : weightedKappa(table, 'quadratic'), table };
}
