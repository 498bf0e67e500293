/**
 * Spearman's rank correlation: Pearson's of the ranks, ties sharing their mean rank (so that it holds with ties).
 * @returns −1 to 1; null where one of the lists does not vary.
 * @throws RangeError as pearson does.
 */
export function spearman(first: readonly number[], second: readonly number[]): number | null {
  return pearson(ranks(first), ranks(second));
}

/**
 * Pearson's product-moment correlation of two equally long lists.
 * @returns −1 to 1; null where one of the lists does not vary, since it is undefined then.
 * @throws RangeError for lists of different lengths or of fewer than two values.
 */
export function pearson(first: readonly number[], second: readonly number[]): number | null {
  if (first.length !== second.length)
    throw new RangeError(
      `A correlation needs lists of one length; these have ${first.length} and ${second.length} values.`,
    );
  if (first.length < 2) throw new RangeError(`A correlation needs two values or more; ${first.length} were given.`);
  const meanFirst = mean(first),
    meanSecond = mean(second);
  let products = 0,
    spreadFirst = 0,
    spreadSecond = 0;
  first.forEach((value, index) => {
    const a = value - meanFirst,
      b = second[index]! - meanSecond;
    products += a * b;
    spreadFirst += a * a;
    spreadSecond += b * b;
  });
  if (spreadFirst === 0 || spreadSecond === 0) return null;
  return Math.min(1, Math.max(-1, products / Math.sqrt(spreadFirst * spreadSecond)));
}

function mean(values: readonly number[]): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}

/**
 * Ranks from 1 up, equal values sharing the mean of their places.
 * @example ranks([10, 20, 20, 30]) // [1, 2.5, 2.5, 4]
 */
export function ranks(values: readonly number[]): number[] {
  const order = values.map((_, index) => index).sort((a, b) => values[a]! - values[b]!);
  const result = new Array<number>(values.length).fill(0);
  for (let start = 0; start < order.length;) {
    let end = start;
    while (end + 1 < order.length && values[order[end + 1]!] === values[order[start]!]) end += 1;
    for (let place = start; place <= end; place += 1) result[order[place]!] = (start + end) / 2 + 1;
    start = end + 1;
  }
  return result;
}
