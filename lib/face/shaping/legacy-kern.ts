import { ByteReader } from '../file/byte-reader';
import { damaged, type Tables } from '../file/tables';

/** Pairs of glyphs with their kerning in font units, by left × 65536 + right. */
export type LegacyKern = { subtables: ReadonlyMap<number, number>[] };

const NONE: LegacyKern = { subtables: [] };

/** Coverage bits (OpenType specification, `kern`): horizontal, cross-stream; the high byte is the format. */
const HORIZONTAL = 1;
const CROSS_STREAM = 4;
const SUBTABLE_HEADER = 6;

/**
 * The legacy `kern` table as Chromium applies it to a web font (each rule was seen in
 * tests/lib/face/legacy-kern.test.ts): subtables of format 0 add up, whether they say “override” or not; other formats
 * and cross-stream ones are passed over; Apple's version, vertical text or pairs out of order make the whole table
 * void. Throws `damaged` where it is cut off.
 */
export function readLegacyKern(tables: Tables): LegacyKern {
  const kern = new ByteReader(tables.get('kern') ?? new Uint8Array());
  if (kern.uint16(0) !== 0) return NONE;
  const count = kern.uint16(2) ?? 0;
  const subtables: Map<number, number>[] = [];
  let at = 4;
  for (let index = 0; index < count; index++) {
    const length = kern.uint16(at + 2);
    const coverage = kern.uint16(at + 4);
    if (length === undefined || coverage === undefined || length < SUBTABLE_HEADER)
      throw damaged('its table kern is cut off');
    if (coverage >> 8 === 0) {
      const pairs = readPairs(kern, at + 6);
      if ((coverage & HORIZONTAL) === 0 || pairs === null) return NONE;
      if ((coverage & CROSS_STREAM) === 0) subtables.push(pairs);
    }
    at += length;
  }
  return { subtables };
}

export function legacyKernOf(kern: LegacyKern, left: number, right: number): number {
  return kern.subtables.reduce((sum, pairs) => sum + (pairs.get(left * 65536 + right) ?? 0), 0);
}

/** Null when the pairs are not in rising order. */
function readPairs(kern: ByteReader, at: number): Map<number, number> | null {
  const pairs = new Map<number, number>();
  const count = kern.uint16(at) ?? 0;
  let before = -1;
  for (let index = 0; index < count; index++) {
    const entry = at + 8 + 6 * index;
    const [left, right, value] = [kern.uint16(entry), kern.uint16(entry + 2), kern.int16(entry + 4)];
    if (left === undefined || right === undefined || value === undefined) throw damaged('its table kern is cut off');
    const pair = left * 65536 + right;
    if (pair <= before) return null;
    before = pair;
    pairs.set(pair, value);
  }
  return pairs;
}
