import { boxOf, type Box } from '@/shared/geometry/polygon';
import type { Contours } from '@/shared/outline/flatten';
import type { EdgeProfile } from '@/shared/outline/edge-profile';

/** How far behind a letter's outermost point white is still counted, 1/1000 em. */
export const REACH = 220;

/** Height of the slices that area is summed over, 1/1000 em. */
export const SLICE = 4;
/** Slices run from here, so that slices of two letters lie side by side. */
const FLOOR = -1000;
const CEILING = 1600;
const SLICES = (CEILING - FLOOR) / SLICE;

/**
 * White beside a letter at the middle of each slice; Infinity where there is no ink. The slices that hold the letter's
 * foot and top are read off at the middle of their inked part: their own middle may lie outside the letter.
 */
export function areaProfile(contours: Contours, advance: number): EdgeProfile {
  const left = new Float64Array(SLICES).fill(Infinity);
  const right = new Float64Array(SLICES).fill(Infinity);
  const { bottom, top } = boxOf(contours) ?? { bottom: 0, top: 0 };
  for (const points of contours) {
    for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
      const x0 = points[j]!,
        y0 = points[j + 1]!,
        x1 = points[i]!,
        y1 = points[i + 1]!;
      const low = Math.min(y0, y1),
        high = Math.max(y0, y1);
      if (low === high) continue;
      for (let slice = Math.max(0, Math.floor((low - FLOOR) / SLICE)); slice < SLICES; slice += 1) {
        const from = FLOOR + slice * SLICE;
        const y = (Math.max(bottom, from) + Math.min(top, from + SLICE)) / 2;
        if (y < low) continue;
        if (y >= high) break;
        const x = x0 + ((x1 - x0) * (y - y0)) / (y1 - y0);
        left[slice] = Math.min(left[slice]!, x);
        right[slice] = Math.min(right[slice]!, advance - x);
      }
    }
  }
  return { left, right };
}

/** White between two letters before any total is added, ready to be read off at any total. */
export type AreaGap = { white: Float64Array; heights: Float64Array; least: number; sum: number; height: number };

/**
 * @param left fine profile and box of the left letter, `right` of the right one.
 * @param reach how far behind a letter's outermost point white counts, 1/1000 em; never more than the letter is wide.
 * At each slice where either letter has ink, white is counted from edge to edge. What lies inside a letter, out of sight from the other, is not counted.
 */
export function areaGap(
  left: { fine: EdgeProfile; upright: { box: Box }; advance: number },
  right: { fine: EdgeProfile; upright: { box: Box } },
  reach = REACH,
): AreaGap {
  const leftBox = left.upright.box,
    rightBox = right.upright.box;
  const bottom = Math.min(leftBox.bottom, rightBox.bottom),
    top = Math.max(leftBox.top, rightBox.top);
  const deepestLeft = left.advance - leftBox.right + Math.min(reach, leftBox.right - leftBox.left);
  const deepestRight = rightBox.left + Math.min(reach, rightBox.right - rightBox.left);
  const white: number[] = [],
    heights: number[] = [];
  let least = Infinity,
    sum = 0;
  for (let slice = 0; slice < SLICES; slice += 1) {
    const low = FLOOR + slice * SLICE;
    // The first and the last slice count only as far as the letters reach.
    const height = Math.min(top, low + SLICE) - Math.max(bottom, low);
    if (height <= 0) continue;
    const open = Math.min(left.fine.right[slice]!, deepestLeft) + Math.min(right.fine.left[slice]!, deepestRight);
    white.push(open);
    heights.push(height);
    least = Math.min(least, open);
    sum += open * height;
  }
  return { white: Float64Array.from(white), heights: Float64Array.from(heights), least, sum, height: top - bottom };
}

/** Plain area of white between two letters, in (1/1000 em)², at a total in 1/1000 em. Where letters overlap there is none. */
export function whiteArea({ white, heights, least, sum, height }: AreaGap, total: number): number {
  if (least + total >= 0) return sum + height * total;
  let open = 0;
  for (let slice = 0; slice < white.length; slice += 1) open += Math.max(0, white[slice]! + total) * heights[slice]!;
  return open;
}

/** The same divided by the height it spans: the mean white, 1/1000 em, so that short and tall pairs can stand side by side. */
export function meanWhite(gap: AreaGap, total: number): number {
  return gap.height === 0 ? 0 : whiteArea(gap, total) / gap.height;
}
