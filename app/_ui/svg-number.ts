/** A coordinate with at most two decimals, without a trailing zero. */
export function number(value: number): string {
  return String(Math.round(value * 100) / 100);
}
