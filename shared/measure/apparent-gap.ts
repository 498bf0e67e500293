import { heightOfBand, STEP } from '@/shared/outline/edge-profile';
import type { LetterShape } from './letter-shape';

/** Between which depths white counts at each height, 1/1000 em. */
export type Depths = { least: number; most: number };

/**
 * Both as shares of the white from stem to stem of the face's own H H, fitted so that HH, HO, OO and nn, no, oo, as
 * designers set them, come out as equal as they look (npm run bench -- openness). Less than the least is contact, which
 * clearance measures; white beyond the most belongs to no gap.
 */
const LEAST_SHARE = 0.4;
const MOST_SHARE = 1.6;
/** A face with less white than this from stem to stem is read as if it had so much. */
const TIGHTEST_STEM_TO_STEM = 60;
/** Where a face or a drawing has neither H nor n. */
const UNKNOWN: Depths = { least: 40, most: 350 };

export function depthsOf(stemToStem: number | null): Depths {
  if (stemToStem === null) return UNKNOWN;
  const white = Math.max(TIGHTEST_STEM_TO_STEM, stemToStem);
  return { least: LEAST_SHARE * white, most: MOST_SHARE * white };
}

/**
 * The white between two letters by their sidebearings alone, height by height from the baseline to the top
 * of d, as it is seen under the sight line. Sorted and summed up, so that any total can be read off at once.
 */
export type VisibleWhite = {
  depths: Depths;
  /** White at each height, narrowest first, 1/1000 em. */
  sorted: Float64Array;
  /** Heights up to each of them, and white times height, summed from the narrowest; one longer than `sorted`. */
  heights: Float64Array;
  areas: Float64Array;
};

export function visibleWhite(left: LetterShape, right: LetterShape, depths: Depths): VisibleWhite {
  const slices = countedBands(left).map((band) => ({
    white: left.seen.right[band]! + right.seen.left[band]!,
    height: heightCounted(left, band),
  }));
  slices.sort((a, b) => a.white - b.white);
  const heights = new Float64Array(slices.length + 1),
    areas = new Float64Array(slices.length + 1);
  slices.forEach(({ white, height }, i) => {
    heights[i + 1] = heights[i]! + height;
    areas[i + 1] = areas[i]! + white * height;
  });
  return { depths, sorted: Float64Array.from(slices, ({ white }) => white), heights, areas };
}

/** The bands that count: those over the baseline; all of them in a face that has nothing there. */
export function countedBands({ heights: { bands } }: LetterShape): number[] {
  const all = Array.from({ length: bands }, (_, band) => band);
  const over = all.filter((band) => heightOfBand(band) > 0);
  return over.length > 0 ? over : all;
}

/** How much of a band is under the top of d, 1/1000 em. */
export function heightCounted({ heights: { bands, lastShare } }: LetterShape, band: number): number {
  return band === bands - 1 ? STEP * lastShare : STEP;
}

/** The most that counts at a height when `total` is added to the sidebearings: what is added counts at every height. */
export function mostCounted({ most }: Depths, total: number): number {
  return most + Math.max(0, total);
}

/**
 * Apparent gap in 1/1000 em: the gap between two straight stems that would hold as much visible white.
 * At each height the white counts from a least to a greatest depth; the mean over the heights is the gap.
 * @param total what is added to the advance (built-in + tracking + offset, and the word space where there is one),
 * 1/1000 em.
 */
export function apparentGap(white: VisibleWhite, total: number): number {
  return whiteArea(white, total) / white.heights[white.sorted.length]!;
}

/** The white that counts, in (1/1000 em)²: the area that is hatched. */
export function whiteArea({ depths, sorted, heights, areas }: VisibleWhite, total: number): number {
  const most = mostCounted(depths, total),
    last = sorted.length;
  const from = countUnder(sorted, depths.least - total),
    to = countUnder(sorted, most - total);
  return (
    depths.least * heights[from]! +
    (areas[to]! - areas[from]!) +
    total * (heights[to]! - heights[from]!) +
    most * (heights[last]! - heights[to]!)
  );
}

/**
 * The total at which a pair's apparent gap equals `target` (1/1000 em), by halving; good to 0.001/1000 em.
 * Null for a target at or under the least depth: no total gives less.
 */
export function totalForGap(white: VisibleWhite, target: number): number | null {
  const { depths, sorted } = white;
  if (!(target > depths.least && target < Infinity)) return null;
  // At the low end every height is at its least; at the high end every height has, and counts, at least the target.
  let low = depths.least - sorted[sorted.length - 1]!,
    high = Math.max(0, target - sorted[0]!, target - depths.most);
  for (let turn = 0; turn < 80 && high - low > 0.0005; turn += 1) {
    const middle = (low + high) / 2;
    if (apparentGap(white, middle) < target) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** How many of the sorted values are less than `limit`. */
function countUnder(sorted: Float64Array, limit: number): number {
  let low = 0,
    high = sorted.length;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (sorted[middle]! < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
