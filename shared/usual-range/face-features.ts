import { inkRuns } from '@/shared/geometry/ink-runs';
import type { LetterShape } from '@/shared/measure/letter-shape';
import { median } from '@/shared/stats/median';
import { NEAR, NEAREST, heldMean, nearMean } from './near-mean';
import { fineHeights, featuresOfLetter, type Frame, type LetterFeatures } from './side-features';

/** The four control letters. */
export type ControlShapes = { H: LetterShape; O: LetterShape; n: LetterShape; o: LetterShape };

/** A face as the usual range sees it. */
export type FaceFeatures = {
  frame: Frame;
  /**
   * The reference gap, 1/1000 em, in which everything is counted: the middle near-weighted gap of the control pairs.
   */
  unit: number;
  /** The same by the mean in which near parts weigh less, 1/1000 em. */
  near: number;
  /** White held between two depths, in the middle of the control pairs, 1/1000 em. */
  held: number;
  /** How many of the fine heights lie under the baseline. */
  below: number;
  /** Least horizontal white between H and H, 1/1000 em. */
  stemGap: number;
  /** What the fit gets to know about the face. */
  inputs: Float64Array;
  featuresOf: (shape: LetterShape) => LetterFeatures;
};

export const FACE_INPUTS = 14;

/** Depths between which white is held, 1/1000 em. */
export const HELD = { least: 60, most: 350 };

/** @returns null for a face whose control letters leave no white to count in. */
export function featuresOfFace(control: ControlShapes, heights: Omit<Frame, 'slant'>): FaceFeatures | null {
  const frame: Frame = { ...heights, slant: slantOf(control.H, heights.capHeight) };
  const made = new WeakMap<LetterShape, LetterFeatures>();
  const featuresOf = (shape: LetterShape): LetterFeatures => {
    const known = made.get(shape) ?? featuresOfLetter(shape, frame);
    made.set(shape, known);
    return known;
  };
  const below = fineHeights(frame).filter((height) => height < 0).length;
  const H = featuresOf(control.H),
    O = featuresOf(control.O),
    n = featuresOf(control.n),
    o = featuresOf(control.o);
  const gap = ([a, b]: [LetterFeatures, LetterFeatures]) => nearMean(whiteOf(a, b), below, 0, NEAREST);
  const held = ([a, b]: [LetterFeatures, LetterFeatures]) => heldMean(whiteOf(a, b), below, 0, HELD.least, HELD.most);
  const capitals = pairsOf([H, O], [H, O]),
    mixed = pairsOf([H, O], [n, o]),
    small = pairsOf([n, o], [n, o]);
  const all = [...capitals, ...mixed, ...small];
  const unit = median(all.map(gap));
  if (!(unit > 1)) return null;
  const { capHeight, xHeight } = frame;
  const stemGap = H.right.least + H.left.least;
  const stem = thickness(control.H, 0.75 * capHeight);
  const stemToStem = whiteBetweenStems(H, 0.75 * capHeight, xHeight, capHeight);
  const inputs = Float64Array.from([
    median(capitals.map(gap)) / unit,
    median(mixed.map(gap)) / unit,
    median(small.map(gap)) / unit,
    median(all.map(held)) / unit,
    unit / capHeight,
    xHeight / capHeight,
    capHeight / unit,
    stemGap / unit,
    (stemToStem - stemGap) / unit,
    counter(control.n, 0.5 * xHeight) / unit,
    O.width / unit,
    stem / unit,
    thickness(control.n, 0.4 * xHeight) / unit,
    frame.slant,
  ]);
  const near = median(all.map(([a, b]) => nearMean(whiteOf(a, b), below, 0, NEAR)));
  return { frame, unit, near, held: median(all.map(held)), below, stemGap, inputs, featuresOf };
}

/** White between two letters at the fine heights as the face sets them without kerning, 1/1000 em. */
export function whiteOf(left: LetterFeatures, right: LetterFeatures): Float64Array {
  const far = right.left.fine;
  return left.right.fine.map((value, i) => value + far[i]!);
}

/** How far a face leans: the drift of H's outer edges between a quarter and three quarters of its height. */
function slantOf(H: LetterShape, capHeight: number): number {
  const low = inkRuns(H.contours, 0.27 * capHeight),
    high = inkRuns(H.contours, 0.73 * capHeight);
  if (low.length === 0 || high.length === 0) return 0;
  const drift = (high[0]! - low[0]! + high[high.length - 1]! - low[low.length - 1]!) / 2;
  const slant = drift / (0.46 * capHeight);
  // An upright face may taper by a hair; nothing leans farther than 45°.
  return Math.abs(slant) < 0.015 ? 0 : Math.min(1, Math.max(-1, slant));
}

/** The first stroke that a level line meets, 1/1000 em. */
function thickness({ contours }: LetterShape, height: number): number {
  const runs = inkRuns(contours, height);
  return runs.length < 2 ? 0 : runs[1]! - runs[0]!;
}

/** The first white that a level line meets inside a letter, 1/1000 em. */
function counter({ contours }: LetterShape, height: number): number {
  const runs = inkRuns(contours, height);
  return runs.length < 3 ? 0 : runs[2]! - runs[1]!;
}

/** White between H and H, clear of serifs and bar. */
function whiteBetweenStems(H: LetterFeatures, height: number, xHeight: number, capHeight: number): number {
  // The drawn profile's heights over the x-height start 14 entries up and run evenly from .1 to .95 of the way to the
  // capitals.
  const place = xHeight < capHeight ? (((height - xHeight) / (capHeight - xHeight) - 0.1) / 0.85) * 5 : 2;
  const index = 14 + Math.min(5, Math.max(0, Math.floor(place + 0.5)));
  return H.right.drawn[index]! + H.left.drawn[index]!;
}

function pairsOf(left: LetterFeatures[], right: LetterFeatures[]): [LetterFeatures, LetterFeatures][] {
  return left.flatMap((a) => right.map((b): [LetterFeatures, LetterFeatures] => [a, b]));
}
