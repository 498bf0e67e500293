import { PAIR_INPUTS, SIDE_INPUTS } from '@/shared/usual-range/pair-inputs';
import { faceParts, sharesOf, sideParts, type Fit, type Shares } from '@/shared/usual-range/shares';
import type { CorpusFace } from './corpus';
import { TAUGHT } from './fit-net';

/** The 2,028 plain pairs of a face come first. */
export const PLAIN_PAIRS = 2028;

/** What the fit says of a face's plain pairs, in reference gaps. */
export function foretold(fit: Fit, face: CorpusFace, pairs = PLAIN_PAIRS): Shares[] {
  const side = (list: Float32Array, letter: number) =>
    sideParts(fit, Float64Array.from(list.subarray(letter * SIDE_INPUTS, (letter + 1) * SIDE_INPUTS)));
  const rights = face.letters.map((_, letter) => side(face.rights, letter)),
    lefts = face.letters.map((_, letter) => side(face.lefts, letter));
  const parts = faceParts(fit, Float64Array.from(face.face));
  return Array.from({ length: pairs }, (_, i) =>
    sharesOf(
      fit,
      rights[face.left[i]!]!,
      lefts[face.right[i]!]!,
      parts,
      Float64Array.from(face.pairs.subarray(i * PAIR_INPUTS, (i + 1) * PAIR_INPUTS)),
    ),
  );
}

export type Judged = {
  r: number;
  /** Mean miss of the middle over that of always saying 0. */
  error: number;
  /** Of pairs where designers act, the share held by the half range and by the nine tenths. */
  half: number;
  nine: number;
  acting: number;
  taught: Record<string, number>;
  aloneRight: number;
};

export function judgeFace(fit: Fit, face: CorpusFace, shares = foretold(fit, face)): Judged {
  const kern = Array.from(face.kern.subarray(0, PLAIN_PAIRS), (value) => value / face.unit);
  let miss = 0,
    zero = 0,
    half = 0,
    nine = 0,
    acting = 0,
    right = 0;
  const taught: Record<string, number> = {};
  shares.forEach((range, i) => {
    const y = kern[i]!;
    miss += Math.abs(range.middle - y);
    zero += Math.abs(y);
    const nineHeld = y >= range.low - 1e-9 && y <= range.high + 1e-9;
    if (range.leftAlone < 0.5) {
      acting += 1;
      if (y >= range.halfLow && y <= range.halfHigh) half += 1;
      if (nineHeld) nine += 1;
    }
    if (range.leftAlone >= 0.5 === Math.abs(y) < 0.025) right += 1;
    const name = face.letters[face.left[i]!]! + face.letters[face.right[i]!]!;
    if (TAUGHT.includes(name)) taught[name] = nineHeld ? 1 : 0;
  });
  return {
    r: pearson(
      shares.map(({ mean }) => mean),
      kern,
    ),
    error: miss / zero,
    half: half / acting,
    nine: nine / acting,
    acting: acting / shares.length,
    taught,
    aloneRight: right / shares.length,
  };
}

/** Means over families of the means over their faces. */
export function overFamilies(faces: CorpusFace[], judged: Judged[]): Judged {
  const families = [...new Set(faces.map(({ family }) => family))];
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const of = (pick: (one: Judged) => number) =>
    mean(families.map((family) => mean(judged.filter((_, i) => faces[i]!.family === family).map(pick))));
  return {
    r: of(({ r }) => r),
    error: of(({ error }) => error),
    half: of(({ half }) => half),
    nine: of(({ nine }) => nine),
    acting: of(({ acting }) => acting),
    aloneRight: of(({ aloneRight }) => aloneRight),
    taught: Object.fromEntries(TAUGHT.map((name) => [name, of(({ taught }) => taught[name]!)])),
  };
}

function pearson(a: number[], b: number[]): number {
  const ma = a.reduce((s, v) => s + v, 0) / a.length,
    mb = b.reduce((s, v) => s + v, 0) / b.length;
  let ab = 0,
    aa = 0,
    bb = 0;
  a.forEach((value, i) => {
    ab += (value - ma) * (b[i]! - mb);
    aa += (value - ma) ** 2;
    bb += (b[i]! - mb) ** 2;
  });
  return ab / Math.sqrt(aa * bb);
}
