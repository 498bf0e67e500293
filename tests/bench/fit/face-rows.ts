import { readFileSync } from 'node:fs';
import { composePairs } from '@/lib/face/compose-pairs';
import { readFace } from '@/lib/face/read-face';
import { prepareFace } from '@/shared/measure/prepared-face';
import { FACE_INPUTS, featuresOfFace } from '@/shared/usual-range/face-features';
import { PAIR_INPUTS, SIDE_INPUTS, pairInputs, sideInputs } from '@/shared/usual-range/pair-inputs';

export type CaseClass = 0 | 1 | 2;

/** A face as the fit sees it: rows of numbers, and the kerning that its designer shipped. */
export type FaceRows = {
  unit: number;
  stemGap: number;
  letters: string[];
  /** Inputs of each letter's right side, then of its left side. */
  rights: Float32Array;
  lefts: Float32Array;
  face: Float32Array;
  left: Uint8Array;
  right: Uint8Array;
  pairs: Float32Array;
  /** 1/1000 em. */
  kern: Float32Array;
  /** Distance of the drawn shapes without kerning, as level lines meet them, 1/1000 em. */
  clear: Float32Array;
};

export const PLAIN = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz'];
const ACCENTED = [...'ÀÂÄÅÇÉÈËÎÑÓÖØÚÜÝàáâäåæçéèêëìíîïñóòöøúüýß'];
/** Of the pairs with an accented letter, one in this many is taken. */
const FEW = 7;

/**
 * Reads one face. The 2,028 plain pairs come first: capitals, capital before small, small; then a share of the pairs
 * with an accented letter.
 * @returns null for a face that does not kern, lacks a letter or has no white to count in.
 */
export async function faceRows(path: string): Promise<FaceRows | null> {
  const face = await readFace(readFileSync(path));
  if (PLAIN.some((letter) => !face.font.nominalGlyph(letter.codePointAt(0)!))) return null;
  const accented = ACCENTED.filter((letter) => face.font.nominalGlyph(letter.codePointAt(0)!));
  const pairs = pairsOf(PLAIN, accented);
  const table = composePairs(face, pairs);
  const scale = 1000 / table.unitsPerEm;
  const kern = Float32Array.from(table.pairs, ({ builtIn }) => builtIn * scale);
  if (kern.filter((value) => value !== 0).length < 40) return null;
  const prepared = prepareFace(table);
  const { H, O, n, o } = table.control;
  if (H === null || O === null || n === null || o === null) return null;
  const shape = prepared.shapeOf;
  const features = featuresOfFace(
    { H: shape(H), O: shape(O), n: shape(n), o: shape(o) },
    {
      capHeight: table.vertical.capHeight * scale,
      xHeight: table.vertical.xHeight * scale,
      ascenderTop: table.vertical.ascenderTop * scale,
    },
  );
  if (features === null) return null;
  const rights = new Float32Array(table.glyphs.length * SIDE_INPUTS),
    lefts = new Float32Array(table.glyphs.length * SIDE_INPUTS);
  table.glyphs.forEach((_, index) => {
    rights.set(sideInputs(features, shape(index), 'right'), index * SIDE_INPUTS);
    lefts.set(sideInputs(features, shape(index), 'left'), index * SIDE_INPUTS);
  });
  const together = new Float32Array(table.pairs.length * PAIR_INPUTS);
  table.pairs.forEach(({ left, right }, index) =>
    together.set(pairInputs(features, shape(left), shape(right)), index * PAIR_INPUTS),
  );
  return {
    unit: features.unit,
    stemGap: features.stemGap,
    letters: table.glyphs.map(({ cluster }) => cluster),
    rights,
    lefts,
    face: Float32Array.from(features.inputs),
    left: Uint8Array.from(table.pairs, ({ left }) => left),
    right: Uint8Array.from(table.pairs, ({ right }) => right),
    pairs: together,
    kern,
    clear: Float32Array.from(
      table.pairs,
      (_, index) => together[index * PAIR_INPUTS + PAIR_INPUTS - 1]! * features.unit,
    ),
  };
}

function isSmall(letter: string): boolean {
  return letter !== letter.toUpperCase() || letter === 'ß';
}

function pairsOf(plain: string[], accented: string[]): string[] {
  const allowed = (a: string, b: string) => !(isSmall(a) && !isSmall(b));
  const first = plain.flatMap((a) => plain.filter((b) => allowed(a, b)).map((b) => a + b));
  const all = [...plain, ...accented];
  const more = all.flatMap((a) =>
    all.filter((b) => allowed(a, b) && (accented.includes(a) || accented.includes(b))).map((b) => a + b),
  );
  return [...first, ...more.filter((_, index) => index % FEW === 0)];
}

/** How wide one face's row of numbers is. */
export const WIDTHS = { side: SIDE_INPUTS, pair: PAIR_INPUTS, face: FACE_INPUTS };
