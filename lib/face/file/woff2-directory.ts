import { FaceError } from '../face-error';
import { LIMITS } from '../limits';
import type { ByteReader } from './byte-reader';

export type Woff2Directory = {
  /** Size of the sfnt that the header promises. */
  total: number;
  /** Where the packed data begins and how long it is. */
  dataAt: number;
  packed: number;
  /** What the data unpacks to, by the list of tables, and where `head` begins in it. */
  unpacked: number;
  headAt: number | undefined;
};

const HEADER_BYTES = 48;
/** Places in the specification's list of known tags (WOFF 2.0, §4.1); the last means that the tag follows. */
const HEAD = 1;
const GLYF = 10;
const LOCA = 11;
const OWN_TAG = 63;
/** In the header, where an sfnt has its signature: a collection. */
const COLLECTION = 0x74746366;

/** Throws FaceError `damaged`, `unsupported`. */
export function readWoff2Directory(reader: ByteReader): Woff2Directory {
  const [flavor, length, total, packed] = [4, 8, 16, 20].map((at) => reader.uint32(at));
  const count = reader.uint16(12);
  if (
    reader.length < HEADER_BYTES ||
    length === undefined ||
    total === undefined ||
    packed === undefined ||
    count === undefined
  )
    throw damaged('its header is cut off');
  if (length !== reader.length) throw damaged(`its header says ${length} bytes, but it has ${reader.length}`);
  if (count === 0 || count > LIMITS.tables) throw damaged(`its header says ${count} tables`);
  if (flavor === COLLECTION)
    throw new FaceError(
      'unsupported',
      'The WOFF2 file holds a collection of faces. Unpack it and choose the single file.',
    );
  const { at, sum, headAt } = readEntries(reader, count);
  if (at + packed > reader.length) throw damaged('its data lies outside the file');
  return { total, dataAt: at, packed, unpacked: sum, headAt };
}

function readEntries(reader: ByteReader, count: number): { at: number; sum: number; headAt: number | undefined } {
  let at = HEADER_BYTES;
  let sum = 0;
  let headAt: number | undefined;
  /** UIntBase128 of the specification: seven bits a byte, at most five bytes. */
  const number = (): number => {
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
    const plain = number();
    const version = flags >> 6;
    const transformed = known === GLYF || known === LOCA ? version !== 3 : version !== 0;
    if (known === HEAD && !transformed) headAt = sum;
    sum += transformed ? number() : plain;
  }
  return { at, sum, headAt };
}

function damaged(what: string): FaceError {
  return new FaceError('damaged', `The WOFF2 file is damaged: ${what}. Get the file again from its source.`);
}
