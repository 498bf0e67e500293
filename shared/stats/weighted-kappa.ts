/**
 * Cohen's weighted kappa for two judges on ordered levels. Weights of disagreement grow with the distance of the
 * levels,
 * `linear` or `quadratic`; `none` is plain kappa.
 * Cohen, “A coefficient of agreement for nominal scales”, Educational and Psychological Measurement 20 (1960) 37–46,
 * and “Weighted kappa”, Psychological Bulletin 70 (1968) 213–220.
 * @param table counts: row is the first judge's level, column the second's.
 * @returns 1 at most; null where chance alone would always agree.
 * @throws RangeError for a table that is not square or holds no count.
 */
export function weightedKappa(
  table: readonly (readonly number[])[],
  weights: 'none' | 'linear' | 'quadratic',
): number | null {
  const levels = table.length;
  const wrong = table.find((row) => row.length !== levels || row.some((count) => !(count >= 0 && count < Infinity)));
  if (wrong)
    throw new RangeError(`Kappa needs a square table of counts; one of its ${levels} rows is [${wrong.join(', ')}].`);
  const rows = table.map(sum),
    columns = table.map((_, level) => sum(table.map((row) => row[level]!)));
  const total = sum(rows);
  if (total === 0) throw new RangeError('Kappa was asked of a table without a single count.');
  let seen = 0,
    expected = 0;
  table.forEach((row, a) =>
    row.forEach((count, b) => {
      const weight = disagreement(a, b, levels, weights);
      seen += weight * count;
      expected += (weight * rows[a]! * columns[b]!) / total;
    }),
  );
  return expected === 0 ? null : 1 - seen / expected;
}

function disagreement(a: number, b: number, levels: number, weights: 'none' | 'linear' | 'quadratic'): number {
  if (weights === 'none') return a === b ? 0 : 1;
  const apart = Math.abs(a - b) / Math.max(1, levels - 1);
  return weights === 'linear' ? apart : apart * apart;
}

function sum(values: readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}
