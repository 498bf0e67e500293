/**
 * Quantile by linear interpolation between order statistics: type 7 of Hyndman and Fan, “Sample quantiles in
 * statistical packages”, The American Statistician 50 (1996) 361–365.
 * @param share 0 to 1.
 * @throws RangeError on an empty list, a share outside 0 to 1, or a value that is not a number.
 * @example quantile([1, 2, 3, 4], 0.25) // 1.75
 */
export function quantile(values: readonly number[], share: number): number {
  if (values.length === 0) throw new RangeError('A quantile of no values was asked for; give at least one.');
  if (!(share >= 0 && share <= 1)) throw new RangeError(`A quantile lies at a share from 0 to 1, not at ${share}.`);
  const wrong = values.find((value) => Number.isNaN(value));
  if (wrong !== undefined) throw new RangeError(`A quantile was asked of a value that is not a number: ${wrong}.`);
  const sorted = [...values].sort((a, b) => a - b);
  const place = (sorted.length - 1) * share;
  const below = Math.floor(place);
  const low = sorted[below]!,
    high = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return low + (high - low) * (place - below);
}
