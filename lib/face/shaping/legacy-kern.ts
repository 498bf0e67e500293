import { ByteReader } from '../file/byte-reader';
import type { Tables } from '../file/tables';

/** Pairs of glyphs with their kerning in font units, by left × 65536 + right. */
export type LegacyKern = { subtables: ReadonlyMap<number, number>[] };

/** Coverage bits (OpenType specification, `kern`): horizontal, minimum values, cross-stream; the high byte is the format. */
const HORIZONTAL = 1;
const CROSS_STREAM = 4;

/**
 * The legacy `kern` table: version 0, horizontal subtables of format 0. Other versions and formats are not
 * applied to web fonts by Chromium either (its font sanitizer drops them). Subtables add up.
 */
export function readLegacyKern(tables: Tables): LegacyKern {
  const kern = new ByteReader(tables.get('kern') ?? new Uint8Array());
  if (kern.uint16(0) !== 0) return { subtables: [] };
  const count = kern.uint16(2) ?? 0;
  const subtables: Map<number, number>[] = [];
  let at = 4;
  for (let index = 0; index < Math.min(count, 64); index++) {
    const length = kern.uint16(at + 2);
    const coverage = kern.uint16(at + 4);
    if (length === undefined || coverage === undefined) break;
    const usable = coverage >> 8 === 0 && (coverage & HORIZONTAL) !== 0 && (coverage & CROSS_STREAM) === 0;
    if (usable) subtables.push(readPairs(kern, at + 6));
    at += length;
  }
  return { subtables };
}

export function legacyKernOf(kern: LegacyKern, left: number, right: number): number {
  return kern.subtables.reduce((sum, pairs) => sum + (pairs.get(left * 65536 + right) ?? 0), 0);
}

function readPairs(kern: ByteReader, at: number): Map<number, number> {
  const pairs = new Map<number, number>();
  const count = kern.uint16(at) ?? 0;
  for (let index = 0; index < count; index++) {
    const entry = at + 8 + 6 * index;
    const [left, right, value] = [kern.uint16(entry), kern.uint16(entry + 2), kern.int16(entry + 4)];
    if (left === undefined || right === undefined || value === undefined) break;
    pairs.set(left * 65536 + right, value);
  }
  return pairs;
}
