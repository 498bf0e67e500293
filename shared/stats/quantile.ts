/**
 * The quantile of type 7 of Hyndman and Fan (1996), the default of R and of NumPy: between the order statistics at
 * 1 + (n − 1)·share, in a straight line.
 * @throws RangeError for an empty list, a value that is not finite, or a share outside 0 to 1.
 * @example quantile([1, 2, 3, 4], 0.25) // 1.75
 */
export function quantile(values: readonly number[], share: number): number {
  if (values.length === 0) throw new RangeError('A quantile needs at least one value.');
  if (!(share >= 0 && share <= 1)) throw new RangeError(`The share of a quantile lies between 0 and 1, not at ${share}.`);
  const wrong = values.find((value) => !Number.isFinite(value));
  if (wrong !== undefined) throw new RangeError(`A quantile cannot be taken of ${wrong}.`);
  const sorted = [...values].sort((one, other) => one - other);
  const position = (sorted.length - 1) * share;
  const below = Math.floor(position);
  const low = sorted[below]!;
  const high = sorted[below + 1] ?? low;
  return low + (high - low) * (position - below);
}
