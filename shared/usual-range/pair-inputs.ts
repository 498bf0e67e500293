import { clearance } from '@/shared/measure/clearance';
import type { LetterShape } from '@/shared/measure/letter-shape';
import { FACE_INPUTS, HELD, whiteOf, type FaceFeatures } from './face-features';
import { NEAR, NEAREST, heldMean, totalForNearMean, nearMean } from './near-mean';
import { HEIGHTS, inUnits, type LetterFeatures } from './side-features';

/**
 * The inputs for one side: its white as seen and as drawn at twenty heights, its nearest point, and its letter's width,
 * top and bottom.
 */
export const SIDE_INPUTS = 2 * HEIGHTS + 4;
/** The inputs for a pair as a whole. */
export const PAIR_INPUTS = 6;
/** Near side, far side, pair, face. */
export const INPUTS = 2 * SIDE_INPUTS + PAIR_INPUTS + FACE_INPUTS;

/** One side of a letter as input for the fit, in reference gaps. */
export function sideInputs(face: FaceFeatures, shape: LetterShape, side: 'left' | 'right'): Float64Array {
  const features = face.featuresOf(shape);
  const { unit, frame } = face;
  const { seen, drawn, least } = features[side];
  return Float64Array.from([
    ...inUnits(seen, unit),
    ...inUnits(drawn, unit),
    least / unit,
    Math.min(12, features.width / unit),
    Math.min(2, features.top / frame.capHeight),
    Math.max(-1, features.bottom / frame.capHeight),
  ]);
}

/** Farther than this many reference gaps makes no difference. */
const FARTHEST = 3;

/**
 * The pair as a whole: the totals that would give it the face's reference gap, how near it is, how much white it holds.
 */
export function pairInputs(face: FaceFeatures, left: LetterShape, right: LetterShape): Float64Array {
  const a = face.featuresOf(left),
    b = face.featuresOf(right);
  const white = whiteOf(a, b);
  const { unit, below } = face;
  const bounded = (value: number) => Math.min(FARTHEST, Math.max(-FARTHEST, value));
  return Float64Array.from([
    bounded(totalForNearMean(white, below, unit, NEAREST) / unit),
    bounded(totalForNearMean(white, below, face.near, NEAR) / unit),
    bounded(nearMean(white, below, 0, NEAR) / unit),
    bounded((heldMean(white, below, 0, HELD.least, HELD.most) - face.held) / unit),
    Math.min(FARTHEST, clearance(left, right, left.advance).distance / unit),
    bounded(nearestLevel(a, b) / unit),
  ]);
}

/** The nearest horizontal white at the twenty heights, as drawn, 1/1000 em. */
function nearestLevel(left: LetterFeatures, right: LetterFeatures): number {
  let least = Infinity;
  for (let i = 0; i < HEIGHTS; i += 1) least = Math.min(least, left.right.drawn[i]! + right.left.drawn[i]!);
  return least;
}
