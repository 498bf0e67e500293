import { weightedKappa } from '@/shared/stats/weighted-kappa';
import { counted, numberText, withUnit } from '@/shared/text/number';

/** One proof as two markers judged it by one criterion: indices of levels, lowest 0. */
export type Judged = { first: number; second: number };

export type Agreement = {
  /** Proofs that both have judged. */
  n: number;
  /** Shares from 0 to 1; null where n is 0. */
  exact: number | null;
  /** The same level or the one beside it. */
  adjacent: number | null;
  /**
   * Quadratic weighted kappa (Cohen 1968); null where it is undefined: no proof, or both always gave one and the same
   * level.
   */
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

/**
 * Under so many proofs nothing is read from the figures. Our own choice: one proof more or less would turn the reading
 * round.
 */
export const fewestProofs = 10;
/** Under so many proofs the reading is called rough. Our own choice. */
const roughUnder = 30;

/**
 * A plain reading of the agreement by one criterion, without claiming more than the proofs carry. The names of the
 * bands are those of Landis and Koch, “The measurement of observer agreement for categorical data”, Biometrics 33
 * (1977) 159–174, who call them arbitrary themselves: a convention.
 */
export function agreementWords({ n, exact, kappa, table }: Agreement): string {
  if (n === 0) return 'No proof has been finished by two markers yet.';
  if (n < fewestProofs)
    return `${counted(n, 'proof')}: too few to say. At least ${fewestProofs} are needed before a reading means anything.`;
  if (kappa === null)
    return `Both gave every one of the ${n} proofs the same single level, so kappa cannot tell agreement from chance.`;
  const rough = n < roughUnder ? ` With ${n} proofs this is rough.` : '';
  const twoLevels = table.length === 2 ? ' With two levels, every pair of levels is adjacent.' : '';
  return `Agreement beyond chance is ${bandOf(kappa)} (${numberText(kappa, 2)}; a convention by Landis and Koch, 1977). The same level in ${withUnit(exact! * 100, '%', 0)} of ${n} proofs.${rough}${twoLevels}`;
}

/** The conventional name of a kappa. Bounds belong to the lower band, as in their table (0.00–0.20, 0.21–0.40, …). */
export function bandOf(kappa: number): string {
  if (kappa < 0) return 'poor';
  if (kappa <= 0.2) return 'slight';
  if (kappa <= 0.4) return 'fair';
  if (kappa <= 0.6) return 'moderate';
  if (kappa <= 0.8) return 'substantial';
  return 'almost perfect';
}
