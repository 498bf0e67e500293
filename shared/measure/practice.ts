import { heightOfBand, STEP } from '@/shared/outline/edge-profile';
import { seenGap, totalForNearGap } from './near-gap';
import { clearance } from './clearance';
import type { LetterShape } from './letter-shape';
import { LOOKS, PRACTICE, type Look } from './practice-looks';
import type { PreparedFace } from './prepared-face';

/**
 * The kerning that a designer would be expected to ship for this pair at reading sizes, 1/1000 em; null for a face
 * without control letters. It is held against shipped kerning and never asked of a student.
 *
 * It starts from the total that the apparent gap asks for, and takes a few looks at the two facing sides. A look adds up
 * the openness of both sides at twenty heights, each with its own weight; what exceeds the look's threshold counts, the
 * rest is let pass. The weights were fitted to shipped kerning (tests/bench/agreement) and know shapes only: no letter
 * has a name here. A pair and its mirror image are looked at both ways and get one answer.
 */
export function practiceKerning(face: PreparedFace, left: LetterShape, right: LetterShape): number | null {
  const inputs = practiceInputs(face, left, right);
  if (inputs === null || face.reference === null) return null;
  const raw = practiceShare(inputs, LOOKS, PRACTICE.rest) * face.reference;
  return PRACTICE.share * (Math.min(0, raw + PRACTICE.letPass) + Math.max(0, raw - PRACTICE.letPass)) + 0;
}

/** The kerning expected before small amounts are let pass, as a share of the reference gap. */
export function practiceShare({ near, far, gap, clear }: PracticeInputs, looks: readonly Look[], rest: number): number {
  return rest + (lookAt(looks, near, far, gap, clear) + lookAt(looks, far, near, gap, clear)) / 2;
}

/** What the looks see, all as shares of the face's own reference gap. */
export type PracticeInputs = {
  /** Openness of the left letter's right side, and of the right letter's left side, at each height. */
  near: Float64Array;
  far: Float64Array;
  /** Total that would give the pair the face's reference gap. */
  gap: number;
  clear: number;
};

/** Openness and clearance beyond these shares of the reference gap make no difference. */
const DEEPEST = 4;
const FARTHEST = 1.5;

export function practiceInputs(face: PreparedFace, left: LetterShape, right: LetterShape): PracticeInputs | null {
  const unit = face.reference;
  const total = unit === null ? null : totalForNearGap(seenGap(left, right), unit);
  if (unit === null || total === null) return null;
  return {
    near: sidesOf(face, left, unit).right,
    far: sidesOf(face, right, unit).left,
    gap: total / unit,
    clear: Math.min(FARTHEST, clearance(left, right, left.advance).distance / unit),
  };
}

/** Twenty heights: four under the baseline, ten up to the x-height, six from there to the height of capitals. */
export function practiceHeights({ xHeight, capHeight }: PreparedFace): number[] {
  const under = [0, 1, 2, 3].map((i) => -230 + (200 * i) / 3);
  const small = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9].map((i) => (0.04 + (0.92 * i) / 9) * xHeight);
  const over = [0, 1, 2, 3, 4, 5].map((i) => xHeight + (0.1 + (0.85 * i) / 5) * (capHeight - xHeight));
  return [...under, ...small, ...over];
}

type Sides = { left: Float64Array; right: Float64Array };
const sides = new WeakMap<LetterShape, Sides>();

/** Openness of both sides of a letter, worked out once. */
function sidesOf(face: PreparedFace, shape: LetterShape, unit: number): Sides {
  const known = sides.get(shape);
  if (known) return known;
  const made = { left: openness(face, shape.seen.left, unit), right: openness(face, shape.seen.right, unit) };
  sides.set(shape, made);
  return made;
}

/** A sighted profile read off at the twenty heights, between the middles of its bands. */
function openness(face: PreparedFace, profile: Float64Array, unit: number): Float64Array {
  const last = profile.length - 1;
  return Float64Array.from(practiceHeights(face), (height) => {
    const place = Math.min(last, Math.max(0, (height - heightOfBand(0)) / STEP));
    const below = Math.min(Math.floor(place), Math.max(0, last - 1)),
      above = Math.min(last, below + 1);
    const from = Math.min(DEEPEST * unit, profile[below]!),
      to = Math.min(DEEPEST * unit, profile[above]!);
    return (from + (to - from) * (place - below)) / unit;
  });
}

function lookAt(looks: readonly Look[], near: Float64Array, far: Float64Array, gap: number, clear: number): number {
  let sum = 0;
  for (const look of looks) {
    let seen = look.threshold + look.gap * gap + look.clear * clear;
    for (let i = 0; i < near.length; i += 1) seen += look.near[i]! * near[i]! + look.far[i]! * far[i]!;
    if (seen > 0) sum += look.counts * seen;
  }
  return sum;
}
