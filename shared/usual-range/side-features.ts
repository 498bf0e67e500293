import type { LetterShape } from '@/shared/measure/letter-shape';

/**
 * How a side is read: at any height, exactly, along the slant of the face. The white to a side at a height is the least
 * of white(y) + slope · |y − height| over the whole outline: a gentle slope is how a side is seen, a steep one nearly
 * how it is drawn. Both fill heights without ink, and neither jumps when a letter moves by a hair.
 */
const SEEN_SLOPE = 1.5;
const DRAWN_SLOPE = 8;

/** White deeper than this many reference gaps makes no difference. */
const DEEPEST = 4;

/** Heights under the baseline, up to the x-height, and from there to the height of capitals. */
const UNDER = 4;
const SMALL = 10;
const OVER = 6;
export const HEIGHTS = UNDER + SMALL + OVER;

/** From the lowest descender that counts up, every 20/1000 em: where the white of a pair is summed. */
const LOWEST = -250;
const STEP = 20;

/**
 * What is known of a face before any letter is looked at, 1/1000 em. `slant` is the shift to the right per unit of
 * height.
 */
export type Frame = { capHeight: number; xHeight: number; ascenderTop: number; slant: number };

/**
 * One side of a letter: its white as seen and nearly as drawn at twenty heights, and as seen at every step. 1/1000 em.
 */
type SideFeatures = { seen: Float64Array; drawn: Float64Array; fine: Float64Array; least: number };

/** Both sides of a letter and where its ink ends. 1/1000 em. */
export type LetterFeatures = { left: SideFeatures; right: SideFeatures; width: number; top: number; bottom: number };

/**
 * Twenty heights, lowest first: four under the baseline, ten up to the x-height, six from there to the height of
 * capitals.
 */
function featureHeights({ xHeight, capHeight }: Frame): Float64Array {
  const heights = new Float64Array(HEIGHTS);
  for (let i = 0; i < UNDER; i += 1) heights[i] = (-0.46 + 0.4 * (i / (UNDER - 1))) * xHeight;
  for (let i = 0; i < SMALL; i += 1) heights[UNDER + i] = (0.04 + (0.92 * i) / (SMALL - 1)) * xHeight;
  for (let i = 0; i < OVER; i += 1)
    heights[UNDER + SMALL + i] = xHeight + (0.1 + (0.85 * i) / (OVER - 1)) * (capHeight - xHeight);
  // Small letters may be drawn as high as capitals.
  return heights.sort();
}

/** The heights at which the white of a pair is summed. */
export function fineHeights({ ascenderTop }: Frame): Float64Array {
  const count = Math.max(2, Math.floor((ascenderTop - LOWEST) / STEP) + 1);
  return Float64Array.from({ length: count }, (_, i) => LOWEST + i * STEP);
}

export function featuresOfLetter(shape: LetterShape, frame: Frame): LetterFeatures {
  const outline = uprightOutline(shape, frame.slant);
  let left = Infinity,
    right = -Infinity;
  for (let i = 0; i < outline.length; i += 4) {
    left = Math.min(left, outline[i]!, outline[i + 2]!);
    right = Math.max(right, outline[i]!, outline[i + 2]!);
  }
  const heights = featureHeights(frame),
    fine = fineHeights(frame);
  const side = (facing: 1 | -1): SideFeatures => ({
    seen: whiteAt(outline, shape.advance, facing, heights, SEEN_SLOPE),
    drawn: whiteAt(outline, shape.advance, facing, heights, DRAWN_SLOPE),
    fine: whiteAt(outline, shape.advance, facing, fine, SEEN_SLOPE),
    least: facing === 1 ? left : shape.advance - right,
  });
  // Many letters are asked for one side only.
  let leftLook: SideFeatures | undefined, rightLook: SideFeatures | undefined;
  return {
    get left() {
      return (leftLook ??= side(1));
    },
    get right() {
      return (rightLook ??= side(-1));
    },
    width: right - left,
    top: shape.box.top,
    bottom: shape.box.bottom,
  };
}

/** White of a side in reference gaps, nothing deeper than counts. */
export function inUnits(white: Float64Array, unit: number): Float64Array {
  return white.map((value) => Math.min(DEEPEST, value / unit));
}

/** The outline's segments x0 y0 x1 y1 with the slant of the face taken out. */
function uprightOutline({ contours }: LetterShape, slant: number): Float64Array {
  let count = 0;
  for (const points of contours) count += points.length;
  const segments = new Float64Array(count * 2);
  let at = 0;
  for (const points of contours) {
    for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
      segments[at] = points[j]! - slant * points[j + 1]!;
      segments[at + 1] = points[j + 1]!;
      segments[at + 2] = points[i]! - slant * points[i + 1]!;
      segments[at + 3] = points[i + 1]!;
      at += 4;
    }
  }
  return segments;
}

/**
 * The white of one side (1 left, −1 right) at each height, lowest first. Along a straight piece the least of white(y) +
 * slope · |y − height| is at an end of it or right at the height. Ends are sorted by the heights around them, and swept
 * upwards and downwards once.
 */
function whiteAt(
  outline: Float64Array,
  advance: number,
  facing: 1 | -1,
  heights: Float64Array,
  slope: number,
): Float64Array {
  const count = heights.length;
  const white = new Float64Array(count).fill(Infinity);
  // Of the ends under height k and over the one before it: the least as seen from above and as seen from below.
  const fromBelow = new Float64Array(count + 1).fill(Infinity),
    fromAbove = new Float64Array(count + 1).fill(Infinity);
  const origin = facing === 1 ? 0 : advance;
  for (let i = 0; i < outline.length; i += 4) {
    const xa = origin + facing * outline[i]!,
      ya = outline[i + 1]!,
      xb = origin + facing * outline[i + 2]!,
      yb = outline[i + 3]!;
    const from = placeOf(ya, heights),
      to = placeOf(yb, heights);
    fromBelow[from] = Math.min(fromBelow[from]!, xa - slope * ya);
    fromAbove[from] = Math.min(fromAbove[from]!, xa + slope * ya);
    for (let k = Math.min(from, to); k < Math.max(from, to); k += 1)
      white[k] = Math.min(white[k]!, xa + ((xb - xa) * (heights[k]! - ya)) / (yb - ya));
  }
  for (let k = 0, least = Infinity; k < count; k += 1) {
    least = Math.min(least, fromBelow[k]!);
    white[k] = Math.min(white[k]!, least + slope * heights[k]!);
  }
  for (let k = count - 1, least = Infinity; k >= 0; k -= 1) {
    least = Math.min(least, fromAbove[k + 1]!);
    white[k] = Math.min(white[k]!, least - slope * heights[k]!);
  }
  return white;
}

/** How many of the heights, lowest first, lie under `y`. */
function placeOf(y: number, heights: Float64Array): number {
  let low = 0,
    high = heights.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (heights[middle]! < y) low = middle + 1;
    else high = middle;
  }
  return low;
}
