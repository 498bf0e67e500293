import { brotliDecompressSync } from 'node:zlib';
import decompress from 'wawoff2/decompress.js';
import { FaceError } from '../face-error';
import { LIMITS, megabytes } from '../limits';
import { ByteReader } from './byte-reader';
import { headAdjustment, type OpenedFile } from './checksum';
import { readWoff2Directory, type Woff2Directory } from './woff2-directory';

/**
 * WOFF 2.0 (W3C Recommendation, 1 March 2018) to sfnt. What the header and the list of tables promise is added up
 * first, and the data must unpack to exactly that. WOFF2 has no checksums of its own: `sumHolds` says whether the
 * packed `head` still holds the sum of the whole unpacked face, as most encoders leave it, which a damaged file does
 * not survive.
 */
export async function unpackWoff2(bytes: Uint8Array): Promise<OpenedFile> {
  const directory = readWoff2Directory(new ByteReader(bytes));
  const promised = Math.max(directory.total, directory.unpacked);
  if (promised > LIMITS.unpackedBytes) {
    throw new FaceError(
      'too-large',
      `The WOFF2 file says that it unpacks to ${megabytes(promised)} MB; ${megabytes(LIMITS.unpackedBytes)} MB is the most.`,
    );
  }
  const sumInside = unpackedSum(bytes, directory);
  const sfnt = await decode(bytes);
  return { sfnt, packing: 'WOFF2', sumHolds: sumInside !== undefined && sumInside === headAdjustment(sfnt) };
}

let decoding: Promise<unknown> = Promise.resolve();

/** One file after the other: the decoder's result is in its own memory, which it reuses for the next. */
function decode(bytes: Uint8Array): Promise<Uint8Array> {
  const turn = decoding.then(async () => {
    try {
      return (await decompress(bytes)).slice();
    } catch {
      throw damaged('it does not unpack');
    }
  });
  decoding = turn.catch(() => undefined);
  return turn;
}

/** checksumAdjustment of `head` as it was packed. */
function unpackedSum(bytes: Uint8Array, directory: Woff2Directory): number | undefined {
  let stream: Uint8Array;
  try {
    stream = brotliDecompressSync(bytes.subarray(directory.dataAt, directory.dataAt + directory.packed), {
      maxOutputLength: Math.max(1, directory.unpacked),
    });
  } catch {
    throw damaged('its data does not unpack to the size that its list of tables says');
  }
  if (stream.byteLength !== directory.unpacked)
    throw damaged(
      `its data unpacks to ${stream.byteLength} bytes, not the ${directory.unpacked} that its list of tables says`,
    );
  return directory.headAt === undefined ? undefined : new ByteReader(stream).uint32(directory.headAt + 8);
}

function damaged(what: string): FaceError {
  return new FaceError('damaged', `The WOFF2 file is damaged: ${what}. Get the file again from its source.`);
}
