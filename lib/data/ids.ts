import { createHash, randomBytes } from 'node:crypto';

/**
 * A new id: UUID version 7 (RFC 9562 §5.7), lower case. Ids made later sort later, to the millisecond, which keeps
 * indexes compact; order on screen follows times and numbers and never ids.
 */
export function newId(millisecond: number = Date.now(), random: Uint8Array = randomBytes(10)): string {
  if (!Number.isInteger(millisecond) || millisecond < 0 || millisecond >= 2 ** 48) {
    throw new Error(`newId: ${millisecond} is not a whole number of milliseconds since 1970.`);
  }
  const bytes = Buffer.alloc(16);
  bytes.writeUIntBE(millisecond, 0, 6);
  bytes.set(random, 6);
  return written(bytes, 7);
}

/**
 * The id that follows from these words: two who make the same thing at the same moment meet at one key. UUID version 8
 * (RFC 9562 §5.8) of their SHA-256.
 */
export const idFrom = (words: string): string =>
  written(createHash('sha256').update(words).digest().subarray(0, 16), 8);

function written(bytes: Buffer, version: number): string {
  bytes.writeUInt8((bytes.readUInt8(6) & 0x0f) | (version << 4), 6);
  bytes.writeUInt8((bytes.readUInt8(8) & 0x3f) | 0x80, 8);
  const hex = bytes.toString('hex');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}
