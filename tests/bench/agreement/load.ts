import { boxOf } from '@/shared/geometry/polygon';
import type { LetterShape } from '@/shared/measure/letter-shape';
import { prepareFace, type PreparedFace } from '@/shared/measure/prepared-face';
import { flatten } from '@/shared/outline/flatten';
import { parsePath } from '@/shared/outline/parse-path';
import { faceOf, type UsualFace } from '@/shared/usual-range/usual-range';
import { registryFace } from '@/tests/fixtures/registry-face';

/** Which case a pair is of: both capitals, capital before small, both small. Small before capital is not asked. */
export type CaseClass = 'upper-upper' | 'upper-lower' | 'lower-lower';
export const CASE_CLASSES: CaseClass[] = ['upper-upper', 'upper-lower', 'lower-lower'];

export type AgreementPair = { left: number; right: number; letters: string; caseClass: CaseClass; kern: number };

/** A face with its 52 letters made ready and the 2028 kerning values its designer shipped, 1/1000 em. */
export type AgreementFace = {
  name: string;
  face: PreparedFace;
  usual: UsualFace;
  shapes: LetterShape[];
  pairs: AgreementPair[];
  kerns: number[];
  alwaysZero: number;
};

const LETTERS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz'];
const known = new Map<string, Promise<AgreementFace>>();

/** One after the other: the WOFF2 reader cannot read two files at once. */
export async function agreementFaces(names: readonly string[]): Promise<AgreementFace[]> {
  const faces: AgreementFace[] = [];
  for (const name of names) faces.push(await agreementFace(name));
  return faces;
}

export function agreementFace(name: string): Promise<AgreementFace> {
  const made = known.get(name) ?? load(name);
  known.set(name, made);
  return made;
}

async function load(name: string): Promise<AgreementFace> {
  const source = await registryFace(name);
  const glyphs = LETTERS.map((letter) => source.letter(letter));
  const topOf = (letter: string) => boxOf(flatten(parsePath(source.letter(letter).path), 1))!.top;
  const table = {
    unitsPerEm: source.unitsPerEm,
    vertical: { ascender: 0, descender: 0, capHeight: topOf('H'), xHeight: topOf('x'), ascenderTop: topOf('d') },
    glyphs,
    control: { H: LETTERS.indexOf('H'), O: LETTERS.indexOf('O'), n: LETTERS.indexOf('n'), o: LETTERS.indexOf('o') },
  };
  const face = prepareFace(table);
  const pairs = LETTERS.flatMap((a, left) =>
    LETTERS.flatMap((b, right): AgreementPair[] => {
      if (left >= 26 && right < 26) return [];
      const caseClass = right < 26 ? 'upper-upper' : left < 26 ? 'upper-lower' : 'lower-lower';
      return [{ left, right, letters: a + b, caseClass, kern: (source.kern(a, b) * 1000) / source.unitsPerEm }];
    }),
  );
  const kerns = pairs.map((pair) => pair.kern);
  return {
    name,
    face,
    usual: faceOf(table, face)!,
    shapes: glyphs.map((_, index) => face.shapeOf(index)),
    pairs,
    kerns,
    alwaysZero: meanAbsolute(kerns),
  };
}

export function meanAbsolute(values: number[]): number {
  return values.reduce((sum, value) => sum + Math.abs(value), 0) / values.length;
}
