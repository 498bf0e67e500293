/**
 * JSON in one spelling only: keys sorted by UTF-16 code units, no white space, numbers as ECMAScript writes them
 * (RFC 8785). Equal values give equal text, so that the text can be compared and hashed.
 *
 * Example: canonicalJson({ b: 1, a: [2, null] }) === '{"a":[2,null],"b":1}'
 * @throws TypeError on what JSON cannot hold (undefined, NaN, Infinity, functions, dates, bigint), with the way to it.
 */
export function canonicalJson(value: unknown): string {
  return write(value, []);
}

/** Keys and indices from the whole to where the writing is. Put into words only where something is wrong. */
type Way = (string | number)[];

function write(value: unknown, way: Way): string {
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'string') return writeText(value, way);
  if (typeof value === 'number') return writeNumber(value, way);
  if (Array.isArray(value))
    return `[${Array.from(value, (item: unknown, index) => writePart(item, index, way)).join(',')}]`;
  if (isPlainObject(value)) return writeObject(value, way);
  throw new TypeError(`${inWords(way)} is ${describe(value)}, which JSON cannot hold.`);
}

function writeObject(value: Record<string, unknown>, way: Way): string {
  const keys = Object.keys(value).sort();
  return `{${keys.map((key) => `${writeText(key, way)}:${writePart(value[key], key, way)}`).join(',')}}`;
}

function writePart(value: unknown, at: string | number, way: Way): string {
  way.push(at);
  const written = write(value, way);
  way.pop();
  return written;
}

function writeNumber(value: number, way: Way): string {
  if (!Number.isFinite(value)) throw new TypeError(`${inWords(way)} is ${value}, which JSON cannot hold.`);
  return JSON.stringify(value);
}

/** Half a surrogate pair has no UTF-8, so it would not survive storing (RFC 8785 §3.2.2.2). */
function writeText(value: string, way: Way): string {
  if (/[\uD800-\uDFFF]/u.test(value))
    throw new TypeError(`${inWords(way)} holds half a surrogate pair: ${JSON.stringify(value)}`);
  return JSON.stringify(value);
}

const inWords = (way: Way): string => `$${way.map((at) => (typeof at === 'number' ? `[${at}]` : `.${at}`)).join('')}`;

function isPlainObject(value: unknown): value is Record<string, unknown> {
  if (typeof value !== 'object' || value === null) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}

function describe(value: unknown): string {
  return typeof value === 'object' ? `a ${value?.constructor?.name ?? 'object'}` : typeof value;
}
