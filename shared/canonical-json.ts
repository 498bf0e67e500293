/**
 * JSON with the keys of every object in code-unit order and no white space, so that equal values give equal text.
 * Throws on what JSON can't hold (NaN, infinities, functions) instead of writing null.
 */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value === 'boolean' || typeof value === 'string') return JSON.stringify(value);
  if (typeof value === 'number') {
    if (value - value !== 0) throw new TypeError(`JSON can't hold the number ${value}.`);
    return JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value === 'object') {
    const entries = Object.entries(value).filter(([, one]) => one !== undefined);
    entries.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
    return `{${entries.map(([key, one]) => `${JSON.stringify(key)}:${canonicalJson(one)}`).join(',')}}`;
  }
  throw new TypeError(`JSON can't hold a ${typeof value}.`);
}
