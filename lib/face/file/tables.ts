import { FaceError } from '../face-error';
import { LIMITS } from '../limits';
import { ByteReader } from './byte-reader';
import { tableSum } from './checksum';

export type Tables = ReadonlyMap<string, Uint8Array>;

/** Without these no line can be set (OpenType specification, "Required tables"; OS/2 and post are done without). */
const NEEDED = ['head', 'maxp', 'cmap', 'hhea', 'hmtx'];

/**
 * The tables of one face in an sfnt file, each inside the file and true to its own checksum.
 * `index` chooses a face of a collection. Throws FaceError `damaged`, `unsupported`, `not-a-face`.
 */
export function readTables(sfnt: Uint8Array, index: number): Tables {
  const reader = new ByteReader(sfnt);
  const start = directoryStart(reader, index);
  const count = reader.uint16(start + 4);
  if (count === undefined) throw damaged('it ends inside its list of tables');
  if (count === 0 || count > LIMITS.tables) throw damaged(`its list says ${count} tables`);
  const tables = new Map<string, Uint8Array>();
  for (let i = 0; i < count; i++) {
    const entry = start + 12 + 16 * i;
    const tag = reader.tag(entry);
    const [checksum, offset, length] = [4, 8, 12].map((skip) => reader.uint32(entry + skip));
    if (tag === undefined || checksum === undefined || offset === undefined || length === undefined)
      throw damaged('it ends inside its list of tables');
    if (offset + length > sfnt.byteLength)
      throw damaged(`its table ${shown(tag)} ends at byte ${offset + length}, but the file has ${sfnt.byteLength}`);
    const table = sfnt.subarray(offset, offset + length);
    if (MEASURED.has(tag) && tableSum(table, tag === 'head') !== checksum)
      throw damaged(`its table ${shown(tag)} does not agree with its own checksum`);
    tables.set(tag, table);
  }
  const missing = NEEDED.filter((tag) => !tables.has(tag));
  if (missing.length > 0)
    throw new FaceError(
      'not-a-face',
      `The file has no table ${missing.join(', ')}, so it can't set a line. Choose a complete face file.`,
    );
  if (!['glyf', 'CFF ', 'CFF2'].some((tag) => tables.has(tag))) {
    throw new FaceError(
      'unsupported',
      'The face has no outlines (no table glyf, CFF or CFF2), only pictures perhaps. Choose a face with outlines.',
    );
  }
  return tables;
}

/** Tables that numbers are taken from. Others may be wrong without harm. */
const MEASURED = new Set([
  'head',
  'maxp',
  'cmap',
  'hhea',
  'hmtx',
  'glyf',
  'loca',
  'CFF ',
  'CFF2',
  'GPOS',
  'GSUB',
  'GDEF',
  'kern',
  'OS/2',
  'fvar',
  'avar',
  'gvar',
  'HVAR',
  'MVAR',
]);

export function isCollection(sfnt: Uint8Array): boolean {
  return new ByteReader(sfnt).tag(0) === 'ttcf';
}

function directoryStart(reader: ByteReader, index: number): number {
  if (!isCollection(reader.bytes)) {
    if (index === 0) return 0;
    throw new FaceError(
      'unsupported',
      `The file holds one face, so there is no face number ${index} in it. Leave the number out.`,
    );
  }
  const faces = reader.uint32(8) ?? 0;
  const start = index < faces ? reader.uint32(12 + 4 * index) : undefined;
  if (start === undefined)
    throw new FaceError(
      'unsupported',
      `The collection holds ${faces} faces, numbered from 0, so there is no face number ${index} in it.`,
    );
  return start;
}

function shown(tag: string): string {
  return `“${tag.replace(/[^\x20-\x7e]/g, '?')}”`;
}

export function damaged(what: string): FaceError {
  return new FaceError('damaged', `The face file is damaged: ${what}. Get the file again from its source.`);
}
