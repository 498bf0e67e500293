import { inflateSync } from 'node:zlib';
import { FaceError } from '../face-error';
import { LIMITS, megabytes } from '../limits';
import { ByteReader } from './byte-reader';

type WoffTable = { tag: string; offset: number; packed: number; length: number; checksum: number };

const HEADER_BYTES = 44;
const ENTRY_BYTES = 20;

/** WOFF 1.0 (W3C Recommendation, 13 December 2012) to sfnt. No table may grow past what its header says. */
export function unpackWoff(bytes: Uint8Array): Uint8Array {
  const reader = new ByteReader(bytes);
  const tables = readDirectory(reader);
  const total = tables.reduce((sum, table) => sum + padded(table.length), 12 + 16 * tables.length);
  if (total > LIMITS.unpackedBytes) {
    throw new FaceError(
      'too-large',
      `The WOFF file says that it unpacks to ${megabytes(total)} MB; ${megabytes(LIMITS.unpackedBytes)} MB is the most.`,
    );
  }
  return layOut(bytes, reader.uint32(4) ?? 0, tables, total);
}

/**
 * The sfnt as it was before packing: the directory unchanged, the tables in the order of their data, so that its
 * checksum matches.
 */
function layOut(bytes: Uint8Array, signature: number, tables: WoffTable[], total: number): Uint8Array {
  const sfnt = new Uint8Array(total);
  const view = new DataView(sfnt.buffer);
  const doublings = Math.floor(Math.log2(tables.length));
  view.setUint32(0, signature);
  [tables.length, 16 * 2 ** doublings, doublings, 16 * tables.length - 16 * 2 ** doublings].forEach((value, index) =>
    view.setUint16(4 + 2 * index, value),
  );
  let end = 12 + 16 * tables.length;
  for (const table of [...tables].sort((a, b) => a.offset - b.offset)) {
    const entry = 12 + 16 * tables.indexOf(table);
    for (let i = 0; i < 4; i++) view.setUint8(entry + i, table.tag.charCodeAt(i));
    view.setUint32(entry + 4, table.checksum);
    view.setUint32(entry + 8, end);
    view.setUint32(entry + 12, table.length);
    sfnt.set(unpackTable(bytes, table), end);
    end += padded(table.length);
  }
  return sfnt;
}

function readDirectory(reader: ByteReader): WoffTable[] {
  const count = reader.uint16(12);
  if (count === undefined || reader.uint32(8) === undefined) throw damaged('its header is cut off');
  if (count === 0 || count > LIMITS.tables) throw damaged(`its header says ${count} tables`);
  if (reader.uint32(8) !== reader.length)
    throw damaged(`its header says ${reader.uint32(8)} bytes, but it has ${reader.length}`);
  const tables = Array.from({ length: count }, (_, index) => {
    const at = HEADER_BYTES + ENTRY_BYTES * index;
    const tag = reader.tag(at);
    const [offset, packed, length, checksum] = [4, 8, 12, 16].map((skip) => reader.uint32(at + skip));
    if (
      tag === undefined ||
      offset === undefined ||
      packed === undefined ||
      length === undefined ||
      checksum === undefined
    )
      throw damaged('its list of tables is cut off');
    if (offset + packed > reader.length || packed > length) throw damaged(`its table ${tag} lies outside the file`);
    return { tag, offset, packed, length, checksum };
  });
  // The specification asks for this order, and a changed tag seldom keeps it.
  if (tables.some((table, index) => index > 0 && table.tag <= tables[index - 1]!.tag))
    throw damaged('its list of tables is not in order');
  return tables;
}

function unpackTable(bytes: Uint8Array, table: WoffTable): Uint8Array {
  const data = bytes.subarray(table.offset, table.offset + table.packed);
  if (table.packed === table.length) return data;
  let plain: Uint8Array;
  try {
    plain = inflateSync(data, { maxOutputLength: table.length });
  } catch {
    throw damaged(`its table ${table.tag} does not unpack to the ${table.length} bytes that it should have`);
  }
  if (plain.byteLength !== table.length)
    throw damaged(`its table ${table.tag} has ${plain.byteLength} bytes, not the ${table.length} it should have`);
  return plain;
}

function padded(length: number): number {
  return Math.ceil(length / 4) * 4;
}

function damaged(what: string): FaceError {
  return new FaceError('damaged', `The WOFF file is damaged: ${what}. Get the file again from its source.`);
}
