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
