import { FaceError, quoted } from '../face-error';
import { LIMITS } from '../limits';
import { ByteReader } from './byte-reader';
import type { Tables } from './tables';

/** Flags of a part (OpenType specification, `glyf`, component glyph flags). */
const WORDS = 0x0001;
const ONE_SCALE = 0x0008;
const MORE = 0x0020;
const TWO_SCALES = 0x0040;
const MATRIX = 0x0080;

/**
 * Follows the parts of a TrueType glyph down and refuses what a reader would quietly cut off:
 * parts that go round in a circle, nest too deep, are too many, or lie outside the file.
 */
export function checkComposite(tables: Tables, glyph: number, cluster: string): void {
  if (!tables.has('glyf')) return;
  let parts = 0;
  const visit = (id: number, above: readonly number[]): void => {
    if (above.includes(id)) throw refused(cluster, `glyph ${id} is a part of itself`);
    if (above.length > LIMITS.compositeDepth)
      throw refused(cluster, `its parts nest deeper than ${LIMITS.compositeDepth}`);
    for (const part of partsOf(tables, id, cluster)) {
      if (++parts > LIMITS.compositeParts) throw refused(cluster, `it has more than ${LIMITS.compositeParts} parts`);
      visit(part, [...above, id]);
    }
  };
  visit(glyph, []);
}

function partsOf(tables: Tables, glyph: number, cluster: string): number[] {
  const data = glyphData(tables, glyph);
  if (!data) throw refused(cluster, `glyph ${glyph} is not in the file`);
  if (data.length === 0) return [];
  if ((data.int16(0) ?? 0) >= 0) return [];
  const parts: number[] = [];
  for (let at = 10; ;) {
    const flags = data.uint16(at);
    const part = data.uint16(at + 2);
    if (flags === undefined || part === undefined) throw refused(cluster, `glyph ${glyph} is cut off`);
    parts.push(part);
    if (parts.length > LIMITS.compositeParts || (flags & MORE) === 0) return parts;
    at += 4 + (flags & WORDS ? 4 : 2) + (flags & ONE_SCALE ? 2 : flags & TWO_SCALES ? 4 : flags & MATRIX ? 8 : 0);
  }
}

function glyphData(tables: Tables, glyph: number): ByteReader | undefined {
  const loca = new ByteReader(tables.get('loca') ?? new Uint8Array());
  const glyf = tables.get('glyf') ?? new Uint8Array();
  const long = new ByteReader(tables.get('head') ?? new Uint8Array()).int16(50) === 1;
  const place = (index: number) => (long ? loca.uint32(4 * index) : (loca.uint16(2 * index) ?? Number.NaN) * 2);
  const [from, to] = [place(glyph), place(glyph + 1)];
  if (from === undefined || to === undefined || !(to >= from)) return undefined;
  return new ByteReader(glyf.subarray(from, to));
}

function refused(cluster: string, what: string): FaceError {
  return new FaceError(
    'damaged',
    `The letter ${quoted(cluster)} of this face can't be drawn: ${what}. Get a sound file from its source.`,
  );
}
