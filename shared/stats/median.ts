/**
 * Median: the middle value, or the mean of the two middle ones.
 * @throws RangeError on an empty list or a value that is not a number.
 * @example median([3, 1, 2]) // 2
 */
export function median(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('The median of no values was asked for; give at least one.');
  const wrong = values.find((value) => Number.isNaN(value));
  if (wrong !== undefined) throw new RangeError(`The median was asked of a value that is not a number: ${wrong}.`);
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/**
 * Median absolute deviation from the median, not scaled to a normal's standard deviation.
 * @throws RangeError as median does.
 * @example medianAbsoluteDeviation([1, 1, 2, 2, 4, 6, 9]) // 1
 */
export function medianAbsoluteDeviation(values: readonly number[]): number {
  const centre = median(values);
  return median(values.map((value) => Math.abs(value - centre)));
}
