import decompress from 'wawoff2/decompress.js';
import { FaceError } from '../face-error';
import { LIMITS } from '../limits';
import { ByteReader } from './byte-reader';
import { megabytes } from './open-file';

const HEADER_BYTES = 48;
/** In the table flags: an explicit four-letter tag follows (WOFF 2.0, §4.1). */
const OWN_TAG = 63;
/** Places of `glyf` and `loca` in the specification's table of known tags. */
const GLYF = 10;
const LOCA = 11;

/**
 * WOFF 2.0 (W3C Recommendation, 1 March 2018) to sfnt. The sizes that the header and the list of tables
 * promise are added up first: the decoder makes room for exactly these and refuses data that has more.
 */
export async function unpackWoff2(bytes: Uint8Array): Promise<Uint8Array> {
  checkPromise(new ByteReader(bytes));
  let plain: Uint8Array;
  try {
    plain = await decompress(bytes);
  } catch {
    throw damaged('it does not unpack');
  }
  if (plain.byteLength > LIMITS.unpackedBytes) throw tooLarge(plain.byteLength);
  // The decoder's answer lies in its own memory, which it uses again.
  return plain.slice();
}

function checkPromise(reader: ByteReader): void {
  const [length, total, packed] = [8, 16, 20].map((at) => reader.uint32(at));
  const count = reader.uint16(12);
  if (length === undefined || total === undefined || packed === undefined || count === undefined || reader.length < HEADER_BYTES) throw damaged('its header is cut off');
  if (length !== reader.length) throw damaged(`its header says ${length} bytes, but it has ${reader.length}`);
  if (count === 0 || count > LIMITS.tables) throw damaged(`its header says ${count} tables`);
  if (packed > reader.length) throw damaged('its data lies outside the file');
  const promised = Math.max(total, sumOfTables(reader, count));
  if (promised > LIMITS.unpackedBytes) throw tooLarge(promised);
}

/** What the tables unpack to in all, by their own list. */
function sumOfTables(reader: ByteReader, count: number): number {
  let at = HEADER_BYTES;
  let sum = 0;
  const base128 = (): number => {
    let value = 0;
    for (let digits = 0; digits < 5; digits++) {
      const byte = reader.uint8(at++);
      if (byte === undefined) break;
      value = value * 128 + (byte & 127);
      if (byte < 128) return value;
    }
    throw damaged('its list of tables is cut off');
  };
  for (let index = 0; index < count; index++) {
    const flags = reader.uint8(at++);
    if (flags === undefined) throw damaged('its list of tables is cut off');
    const known = flags & 63;
    if (known === OWN_TAG) at += 4;
    const plain = base128();
    const version = flags >> 6;
    const transformed = known === GLYF || known === LOCA ? version !== 3 : version !== 0;
    sum += Math.max(plain, transformed ? base128() : 0);
  }
  return sum;
}

function tooLarge(bytes: number): FaceError {
  return new FaceError('too-large', `The WOFF2 file says that it unpacks to ${megabytes(bytes)} MB; ${megabytes(LIMITS.unpackedBytes)} MB is the most.`);
}

function damaged(what: string): FaceError {
  return new FaceError('damaged', `The WOFF2 file is damaged: ${what}. Get the file again from its source.`);
}
