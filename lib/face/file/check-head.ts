import { FaceError } from '../face-error';
import { LIMITS } from '../limits';
import { ByteReader } from './byte-reader';
import type { Tables } from './tables';

/** OpenType specification, `head`: magicNumber. */
const MAGIC = 0x5f0f3cf5;

/** The face's units per em; throws where the tables that everything hangs on can't be right. */
export function checkHead(tables: Tables): number {
  const head = new ByteReader(tables.get('head') ?? new Uint8Array());
  const unitsPerEm = head.uint16(18);
  if (head.uint32(12) !== MAGIC || unitsPerEm === undefined || head.length < 54)
    throw damaged('its table head is not one');
  const { least, most } = LIMITS.unitsPerEm;
  if (unitsPerEm < least || unitsPerEm > most) {
    throw new FaceError(
      'damaged',
      `The face says that an em has ${unitsPerEm} units; OpenType allows ${least} to ${most}. Get a sound file from its source.`,
    );
  }
  checkAdvances(tables);
  if (tables.has('glyf')) checkPlaces(tables, head.int16(50));
  return unitsPerEm;
}

/** hmtx must have an advance for each glyph that hhea promises: past its end readers take the last or 0. */
function checkAdvances(tables: Tables): void {
  const glyphs = glyphCount(tables);
  const long = new ByteReader(tables.get('hhea') ?? new Uint8Array()).uint16(34);
  const bytes = tables.get('hmtx')?.byteLength ?? 0;
  if (glyphs === undefined || glyphs === 0 || long === undefined)
    throw damaged('it does not say how many glyphs it has');
  if (long === 0 || long > glyphs) throw damaged(`it has ${glyphs} glyphs but advances for ${long}`);
  if (bytes < 4 * long + 2 * (glyphs - long)) throw damaged('its table hmtx ends before its last advance');
}

/** loca must have a place for each glyph and one more, rising and inside glyf. */
function checkPlaces(tables: Tables, format: number | undefined): void {
  const glyphs = glyphCount(tables) ?? 0;
  const loca = new ByteReader(tables.get('loca') ?? new Uint8Array());
  const end = tables.get('glyf')?.byteLength ?? 0;
  if (format !== 0 && format !== 1) throw damaged(`its head names ${format} as the format of loca`);
  let before = 0;
  for (let glyph = 0; glyph <= glyphs; glyph++) {
    const place = format === 1 ? loca.uint32(4 * glyph) : doubled(loca.uint16(2 * glyph));
    if (place === undefined) throw damaged('its table loca ends before its last glyph');
    if (place < before || place > end) throw damaged(`its table loca puts glyph ${glyph} outside the outlines`);
    before = place;
  }
}

function glyphCount(tables: Tables): number | undefined {
  return new ByteReader(tables.get('maxp') ?? new Uint8Array()).uint16(4);
}

function doubled(value: number | undefined): number | undefined {
  return value === undefined ? undefined : 2 * value;
}

function damaged(what: string): FaceError {
  return new FaceError('damaged', `The face file is damaged: ${what}. Get the file again from its source.`);
}
