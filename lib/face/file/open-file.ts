import { FaceError } from '../face-error';
import { LIMITS, megabytes } from '../limits';
import { ByteReader } from './byte-reader';
import { type OpenedFile, wholeSumHolds } from './checksum';
import { unpackWoff } from './woff';
import { unpackWoff2 } from './woff2';

/**
 * An uploaded face file (TTF, OTF, a collection, WOFF or WOFF2) as plain sfnt bytes. Throws FaceError: `not-a-face`,
 * `too-large`, `damaged`.
 */
export async function openFile(bytes: Uint8Array): Promise<OpenedFile> {
  if (bytes.byteLength === 0)
    throw new FaceError('not-a-face', 'The file is empty. Choose a TTF, OTF, WOFF or WOFF2 file.');
  if (bytes.byteLength > LIMITS.fileBytes) {
    throw new FaceError(
      'too-large',
      `The file has ${megabytes(bytes.byteLength)} MB; a face may have ${megabytes(LIMITS.fileBytes)} MB. Use a file with fewer scripts, such as a Latin subset.`,
    );
  }
  const signature = new ByteReader(bytes).tag(0);
  if (signature === 'wOFF') return withSum(unpackWoff(bytes), 'WOFF');
  if (signature === 'wOF2') return unpackWoff2(bytes);
  if (signature !== undefined && SFNT_SIGNATURES.has(signature)) return withSum(bytes, 'none');
  throw new FaceError(
    'not-a-face',
    `The file begins with ${firstBytes(bytes)}, which no TTF, OTF, WOFF or WOFF2 file does. Choose a face file; a ZIP must be unpacked first.`,
  );
}

/** OpenType specification, "Organization of an OpenType font"; `true` is Apple's for TrueType outlines. */
const SFNT_SIGNATURES = new Set(['\u0000\u0001\u0000\u0000', 'OTTO', 'true', 'ttcf']);

function withSum(sfnt: Uint8Array, packing: OpenedFile['packing']): OpenedFile {
  return { sfnt, packing, sumHolds: wholeSumHolds(sfnt) };
}

function firstBytes(bytes: Uint8Array): string {
  return [...bytes.subarray(0, 4)].map((byte) => byte.toString(16).padStart(2, '0')).join(' ');
}
