import { median } from './median';

/**
 * Median absolute deviation from the median, not scaled to a normal's standard deviation.
 * @throws RangeError as median does.
 * @example medianAbsoluteDeviation([1, 1, 2, 2, 4, 6, 9]) // 1
 */
export function medianAbsoluteDeviation(values: readonly number[]): number {
  const centre = median(values);
  return median(values.map((value) => Math.abs(value - centre)));
}
