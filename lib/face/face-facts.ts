import type { Pack } from '@/shared/schemas/pack';
import { ByteReader } from './file/byte-reader';
import type { Tables } from './file/tables';
import type { HarfBuzz } from './harfbuzz';
import { hasGposKerning } from './shaping/gpos-kerning';
import type { LegacyKern } from './shaping/legacy-kern';

export type ChosenAxis = { tag: string; least: number; usual: number; most: number; value: number };

/** What a face says of itself, as plain data. Lengths in font units, y up. */
export type FaceFacts = {
  family: string;
  style: string;
  /** 1–1000; of a variable face the value of its weight axis. */
  weight: number;
  italic: boolean;
  /** Degrees, negative where stems lean to the right (OpenType specification, `post`); 0 where it does not say. */
  italicAngle: number;
  unitsPerEm: number;
  /**
   * hhea (or OS/2 where the face asks for it), and what H, x and d measure; null where it lacks the letter and does not
   * say.
   */
  vertical: {
    ascender: number;
    descender: number;
    lineGap: number;
    capHeight: number | null;
    xHeight: number | null;
    ascenderTop: number | null;
  };
  axes: ChosenAxis[];
  /** Sizes in px that it is drawn for: its optical-size axis, or OS/2 version 5; null when it does not say. */
  opticalSize: { from: number; to: number } | null;
  outlines: 'TrueType' | 'CFF';
  /** The source of the Latin kerning. */
  kerning: 'GPOS' | 'kern' | 'none';
  /** It has proportional figures to switch on. */
  proportionalFigures: boolean;
  licence: { copyright: string | null; text: string | null; url: string | null };
  /**
   * A sum over the whole file holds. False for many WOFF and some WOFF2 files: the same face as TTF or OTF is safer.
   */
  sumHolds: boolean;
  /** Code points it has a glyph for, as ranges [first, last]. */
  coverage: [number, number][];
};

type Opened = {
  harfbuzz: typeof HarfBuzz;
  face: HarfBuzz.Face;
  font: HarfBuzz.Font;
  tables: Tables;
  axes: ChosenAxis[];
  legacyKern: LegacyKern;
  sumHolds: boolean;
};

export function readFacts(opened: Opened): FaceFacts {
  const { harfbuzz, face, font, tables, axes, legacyKern } = opened;
  const os2 = new ByteReader(tables.get('OS/2') ?? new Uint8Array());
  const valueOf = (tag: string) => axes.find((axis) => axis.tag === tag)?.value;
  const name = nameReader(face);
  const italic = ((os2.uint16(62) ?? 0) & 1) === 1 || valueOf('ital') === 1 || (valueOf('slnt') ?? 0) < 0;
  const extents = font.hExtents();
  return {
    family: name(16) ?? name(1) ?? 'Unnamed face',
    style: name(17) ?? name(2) ?? 'Regular',
    weight: Math.round(valueOf('wght') ?? os2.uint16(4) ?? 400),
    italic,
    italicAngle: ((new ByteReader(tables.get('post') ?? new Uint8Array()).uint32(4) ?? 0) | 0) / 65_536,
    unitsPerEm: face.upem,
    vertical: {
      ascender: extents.ascender,
      descender: extents.descender,
      lineGap: extents.lineGap,
      capHeight: topOf(font, 'H') ?? (sinceVersion(os2, 2, 88) || null),
      xHeight: topOf(font, 'x') ?? (sinceVersion(os2, 2, 86) || null),
      ascenderTop: topOf(font, 'd'),
    },
    axes,
    opticalSize: opticalSize(os2, valueOf('opsz')),
    outlines: tables.has('glyf') ? 'TrueType' : 'CFF',
    kerning: hasGposKerning(harfbuzz, face, 'Latn') ? 'GPOS' : legacyKern.subtables.length > 0 ? 'kern' : 'none',
    proportionalFigures: face.getTableFeatureTags('GSUB').includes('pnum'),
    licence: { copyright: name(0), text: name(13), url: name(14) },
    sumHolds: opened.sumHolds,
    coverage: ranges(face.collectUnicodes()),
  };
}

/** Names by their number (OpenType specification, `name`), in English where there is a choice. */
function nameReader(face: HarfBuzz.Face): (id: number) => string | null {
  const names = face.listNames();
  return (id) => {
    const own = names.filter((one) => one.nameId === id);
    const chosen = own.find((one) => one.language.startsWith('en')) ?? own[0];
    const text = chosen ? face.getName(id, chosen.language).trim() : '';
    return text === '' ? null : text.slice(0, 20_000);
  };
}

function topOf(font: HarfBuzz.Font, letter: string): number | null {
  const glyph = font.nominalGlyph(letter.codePointAt(0) ?? 0);
  if (!glyph) return null;
  const extents = font.glyphExtents(glyph);
  return extents && extents.height !== 0 ? Math.round(extents.yBearing) : null;
}

function sinceVersion(os2: ByteReader, version: number, at: number): number | null {
  return (os2.uint16(0) ?? 0) >= version ? (os2.int16(at) ?? null) : null;
}

/**
 * One unit of `opsz` is one px in CSS (CSS Fonts 4, §font-optical-sizing); OS/2 counts in twentieths of a point,
 * the upper end not included, 0xFFFF meaning no end.
 */
function opticalSize(os2: ByteReader, axis: number | undefined): FaceFacts['opticalSize'] {
  if (axis !== undefined) return { from: axis, to: axis };
  const lower = sinceVersion(os2, 5, 96);
  const upper = (os2.uint16(0) ?? 0) >= 5 ? os2.uint16(98) : undefined;
  if (lower === null || upper === undefined || (lower === 0 && upper === 0xffff)) return null;
  const px = (twentieths: number) => (twentieths / 20) * (96 / 72);
  return { from: px(lower), to: px(upper === 0xffff ? 20 * 2_000 : upper) };
}

function ranges(codePoints: Uint32Array): [number, number][] {
  const sorted = [...codePoints].sort((a, b) => a - b);
  const found: [number, number][] = [];
  for (const point of sorted) {
    const last = found.at(-1);
    if (last && point === last[1] + 1) last[1] = point;
    else found.push([point, point]);
  }
  return found;
}

/** Where the face lacks H, x or d and gives no figures, the usual shares of the em are used (from memory). */
export function verticalOf({ facts }: { facts: FaceFacts }): Pack['vertical'] {
  const { vertical, unitsPerEm } = facts;
  const share = (part: number) => Math.round(part * unitsPerEm);
  return {
    ascender: vertical.ascender,
    descender: vertical.descender,
    capHeight: vertical.capHeight ?? share(0.7),
    xHeight: vertical.xHeight ?? share(0.5),
    ascenderTop: vertical.ascenderTop ?? vertical.capHeight ?? share(0.75),
  };
}
