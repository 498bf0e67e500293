/** What kind of values are judged, which decides how far apart two of them are. */
export type MeasurementLevel = 'nominal' | 'ordinal' | 'interval' | 'ratio';

/**
 * Krippendorff's alpha: agreement of any number of judges, with gaps.
 * Krippendorff, “Computing Krippendorff's alpha-reliability” (2011), by the coincidence matrix.
 * @param units one row a thing judged, one entry a judge, null where a judge left it out.
 * @returns 1 at most; null where fewer than two values are paired, or none differ.
 */
export function krippendorffAlpha(
  units: readonly (readonly (number | null)[])[],
  level: MeasurementLevel,
): number | null {
  const judged = units
    .map((unit) => unit.filter((value): value is number => value !== null))
    .filter((values) => values.length > 1);
  const kinds = [...new Set(judged.flat())].sort((a, b) => a - b);
  const coincidence = kinds.map(() => kinds.map(() => 0));
  for (const values of judged) {
    values.forEach((one, i) =>
      values.forEach((other, j) => {
        if (i !== j) coincidence[kinds.indexOf(one)]![kinds.indexOf(other)]! += 1 / (values.length - 1);
      }),
    );
  }
  const totals = coincidence.map((row) => row.reduce((sum, count) => sum + count, 0));
  const all = totals.reduce((sum, count) => sum + count, 0);
  let seen = 0,
    expected = 0;
  kinds.forEach((_kind, a) =>
    kinds.forEach((_other, b) => {
      const apart = distance(kinds, totals, a, b, level);
      seen += coincidence[a]![b]! * apart;
      expected += totals[a]! * totals[b]! * apart;
    }),
  );
  return expected === 0 ? null : 1 - ((all - 1) * seen) / expected;
}

/** Squared difference of two kinds of value, by the level of measurement. */
function distance(kinds: number[], totals: number[], a: number, b: number, level: MeasurementLevel): number {
  if (a === b) return 0;
  if (level === 'nominal') return 1;
  const one = kinds[a]!,
    other = kinds[b]!;
  if (level === 'interval') return (one - other) * (one - other);
  if (level === 'ratio')
    return one + other === 0 ? 0 : ((one - other) / (one + other)) * ((one - other) / (one + other));
  let between = 0;
  for (let kind = Math.min(a, b); kind <= Math.max(a, b); kind += 1) between += totals[kind]!;
  const steps = between - (totals[a]! + totals[b]!) / 2;
  return steps * steps;
}
