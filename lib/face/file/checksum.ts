import { ByteReader } from './byte-reader';

/**
 * Plain sfnt bytes, the format they were packed in, and whether a checksum over the whole face is stored and matches.
 */
export type OpenedFile = { sfnt: Uint8Array; packing: 'none' | 'WOFF' | 'WOFF2'; sumHolds: boolean };

/** checksumAdjustment makes all bytes of a face add up to this (OpenType specification, `head`). */
const WHOLE_SUM = 0xb1b0afba;

/**
 * Sum of 32-bit words modulo 2^32, the end filled up with zeros; in `head` the field checksumAdjustment counts as 0.
 */
export function tableSum(table: Uint8Array, isHead = false): number {
  const view = new DataView(table.buffer, table.byteOffset, table.byteLength);
  const whole = table.byteLength - (table.byteLength % 4);
  let sum = 0;
  for (let at = 0; at < whole; at += 4) {
    if (!(isHead && at === 8)) sum = (sum + view.getUint32(at)) >>> 0;
  }
  for (let at = whole; at < table.byteLength; at++)
    sum = (sum + view.getUint8(at) * 2 ** (8 * (3 - (at - whole)))) >>> 0;
  return sum;
}

/** Whether all bytes of the face, its list of tables too, add up to the sum that its `head` was made for. */
export function wholeSumHolds(sfnt: Uint8Array): boolean {
  return headAdjustment(sfnt) !== undefined && tableSum(sfnt) === WHOLE_SUM;
}

/** checksumAdjustment of the face's `head`. */
export function headAdjustment(sfnt: Uint8Array): number | undefined {
  const reader = new ByteReader(sfnt);
  for (let index = 0; index < (reader.uint16(4) ?? 0); index++) {
    const entry = 12 + 16 * index;
    if (reader.tag(entry) === 'head') return reader.uint32((reader.uint32(entry + 8) ?? 0) + 8);
  }
  return undefined;
}
