import type { LetterShape } from '@/shared/measure/letter-shape';
import type { Shares } from './shares';
import { HEIGHTS } from './side-features';
import { sharesOfPair, sideOf, type UsualFace } from './usual-range';

/** A pair of the face with the kerning that its designer gave it, 1/1000 em. */
export type KernedPair = { left: LetterShape; right: LetterShape; kern: number };

/** What a face's own kerning reveals about its designer's way of kerning; all in reference gaps. */
export type OwnKerning = {
  /** How much of what is usual this designer does. */
  scale: number;
  /** What is left between the kerning and the scaled range, with the two sides of each pair. */
  rests: { near: Float64Array; far: Float64Array; rest: number }[];
};

/** A face with less than this share of the asked pairs kerned leaves much undone: it must not shrink what is usual. */
const KERNS_LITTLE = 0.4;
/**
 * Where the range holds less of the asked pairs, it has nothing to say of this face. They are those on which designers
 * differ most: on families for choosing a face that holds .70 of them holds .91 of all its pairs.
 */
const LEAST_HELD = 0.5;
/**
 * Sides differ by the mean square of their white, in reference gaps. Nearer than `SAME` both, two pairs are of one
 * class.
 */
const SAME = 0.02;
const REACH = 0.08;
/** Pairs like the one asked for count against this much of nothing known. */
const UNKNOWN = 0.3;
/** Where that is known, ranges need to be less wide. Measured on families for choosing. */
const NARROWER = 0.9;

/** @returns null where the usual range fits this face so badly that it must be silent. */
export function readOwnKerning(face: UsualFace, pairs: readonly KernedPair[]): OwnKerning | null {
  const { unit } = face.features;
  let both = 0,
    square = 0,
    held = 0,
    kerned = 0;
  const known = pairs.map(({ left, right, kern }) => {
    const range = sharesOfPair(face, left, right),
      own = kern / unit;
    both += range.mean * own;
    square += range.mean * range.mean;
    if (kern !== 0) kerned += 1;
    if (own >= range.low - 0.03 && own <= range.high + 0.03) held += 1;
    return { near: sideOf(face, left, 'right').inputs, far: sideOf(face, right, 'left').inputs, mean: range.mean, own };
  });
  if (kerned === 0 || square === 0) return { scale: 1, rests: [] };
  if (held < LEAST_HELD * pairs.length) return null;
  const little = kerned < KERNS_LITTLE * pairs.length;
  const scale = Math.min(1.6, Math.max(little ? 1 : 0.6, both / square));
  return {
    scale,
    // What a face that kerns little left undone says nothing of how its designer kerns.
    rests: known
      .filter(({ own }) => !little || own !== 0)
      .map(({ near, far, mean, own }) => ({ near, far, rest: own - scale * mean })),
  };
}

/**
 * The range of a pair by a face's own kerning: scaled, and moved by what is left over of similar pairs, its class left
 * out.
 */
export function sharesByOwnKerning(face: UsualFace, own: OwnKerning, left: LetterShape, right: LetterShape): Shares {
  const range = sharesOfPair(face, left, right);
  if (own.rests.length === 0) return range;
  const near = sideOf(face, left, 'right').inputs,
    far = sideOf(face, right, 'left').inputs;
  let weights = UNKNOWN,
    sum = 0;
  for (const one of own.rests) {
    const a = apart(near, one.near),
      b = apart(far, one.far);
    if (a < SAME && b < SAME) continue;
    const likeness = 1 / ((1 + a / REACH) * (1 + b / REACH));
    weights += likeness * likeness;
    sum += likeness * likeness * one.rest;
  }
  const middle = own.scale * range.middle + sum / weights;
  const end = (value: number) => middle + NARROWER * own.scale * (value - range.middle);
  return {
    low: end(range.low),
    halfLow: end(range.halfLow),
    middle,
    mean: own.scale * range.mean + sum / weights,
    halfHigh: end(range.halfHigh),
    high: end(range.high),
    leftAlone: range.leftAlone,
  };
}

/** Mean square of what the white of two sides differs by, as seen and as drawn. */
function apart(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < 2 * HEIGHTS; i += 1) sum += (a[i]! - b[i]!) * (a[i]! - b[i]!);
  return sum / (2 * HEIGHTS);
}
