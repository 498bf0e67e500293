import { windingAt } from '@/shared/geometry/polygon';
import { CHUNK, type SegmentChunks } from '@/shared/geometry/segment-chunks';
import { pointToSegmentSquared, segmentsCross } from '@/shared/geometry/segment';
import { STEP } from '@/shared/outline/edge-profile';
import type { LetterShape } from './letter-shape';

/** Nearest distance between two outlines, 1/1000 em, and whether one overlaps the other (the distance is then 0). */
export type Clearance = { distance: number; crossing: boolean };

/**
 * Clearance: the true Euclidean distance between the outlines of two letters, over all their parts (dots and accents
 * too), with the right one's origin `shift` (1/1000 em) to the right of the left one's.
 */
export function clearance(left: LetterShape, right: LetterShape, shift: number): Clearance {
  const a = left.chunks,
    b = right.chunks;
  let least = boundFrom(left, right, shift);
  least *= least;
  for (let i = 0; i < a.boxes.length; i += 4) {
    if (!isWithin(a.boxes, i, right.box.left + shift, right.box.bottom, right.box.right + shift, right.box.top, least))
      continue;
    for (let j = 0; j < b.boxes.length; j += 4) {
      if (!isWithin(a.boxes, i, b.boxes[j]! + shift, b.boxes[j + 1]!, b.boxes[j + 2]! + shift, b.boxes[j + 3]!, least))
        continue;
      least = chunkDistanceSquared(a, i, b, j, shift, least);
      if (least < 0) return { distance: 0, crossing: true };
    }
  }
  if (boxesMeet(left, right, shift) && (least > 0 ? oneInsideOther(left, right, shift) : sharesInk(left, right, shift)))
    return { distance: 0, crossing: true };
  return { distance: Math.sqrt(least), crossing: false };
}

/**
 * No pair is farther apart than its edges within one band, taken at opposite rims of it (which a slant puts aside,
 * too).
 */
function boundFrom(left: LetterShape, right: LetterShape, shift: number): number {
  const bands = Math.min(left.edge.right.length, right.edge.left.length),
    move = shift - left.advance;
  let least = Infinity;
  for (let band = 0; band < bands; band += 1)
    least = Math.min(least, Math.abs(left.edge.right[band]! + right.edge.left[band]! + move));
  // A hair more, so that rounding never lets the bound be less than the distance.
  const aside = least + Math.abs(left.slant) * STEP;
  return Math.sqrt(aside * aside + STEP * STEP) + 0.001;
}

/** Whether box `i` is nearer to the other box than the square root of `limit`. */
function isWithin(
  boxes: Float64Array,
  i: number,
  left: number,
  bottom: number,
  right: number,
  top: number,
  limit: number,
): boolean {
  const gapX = Math.max(0, left - boxes[i + 2]!, boxes[i]! - right),
    gapY = Math.max(0, bottom - boxes[i + 3]!, boxes[i + 1]! - top);
  return gapX * gapX + gapY * gapY < limit;
}

/**
 * Least squared distance between two runs of segments, or `best` where none is nearer; −1 as soon as two of them cross.
 */
function chunkDistanceSquared(
  a: SegmentChunks,
  chunkA: number,
  b: SegmentChunks,
  chunkB: number,
  shift: number,
  best: number,
): number {
  let least = best;
  const endA = Math.min(a.segments.length, (chunkA + 4) * CHUNK),
    endB = Math.min(b.segments.length, (chunkB + 4) * CHUNK);
  for (let i = chunkA * CHUNK; i < endA; i += 4) {
    const ax = a.segments[i]!,
      ay = a.segments[i + 1]!,
      bx = a.segments[i + 2]!,
      by = a.segments[i + 3]!;
    for (let j = chunkB * CHUNK; j < endB; j += 4) {
      const cx = b.segments[j]! + shift,
        cy = b.segments[j + 1]!,
        dx = b.segments[j + 2]! + shift,
        dy = b.segments[j + 3]!;
      const gapX = Math.max(0, Math.min(cx, dx) - Math.max(ax, bx), Math.min(ax, bx) - Math.max(cx, dx));
      const gapY = Math.max(0, Math.min(cy, dy) - Math.max(ay, by), Math.min(ay, by) - Math.max(cy, dy));
      if (gapX * gapX + gapY * gapY >= least) continue;
      if (segmentsCross(ax, ay, bx, by, cx, cy, dx, dy)) return -1;
      least = Math.min(
        least,
        pointToSegmentSquared(ax, ay, cx, cy, dx, dy),
        pointToSegmentSquared(bx, by, cx, cy, dx, dy),
        pointToSegmentSquared(cx, cy, ax, ay, bx, by),
        pointToSegmentSquared(dx, dy, ax, ay, bx, by),
      );
    }
  }
  return least;
}

function boxesMeet({ box: a }: LetterShape, { box: b }: LetterShape, shift: number): boolean {
  return b.left + shift <= a.right && b.right + shift >= a.left && b.bottom <= a.top && b.top >= a.bottom;
}

/** Outlines that do not meet may still lie one over the other: a dot wholly within a heavy stroke. */
function oneInsideOther(left: LetterShape, right: LetterShape, shift: number): boolean {
  return (
    right.contours.some((points) => windingAt(left.contours, points[0]! + shift, points[1]!) !== 0) ||
    left.contours.some((points) => windingAt(right.contours, points[0]! - shift, points[1]!) !== 0)
  );
}

/**
 * Outlines that meet at ends only may touch or lie over each other: whether ink just within one is ink of the other
 * too.
 */
function sharesInk(left: LetterShape, right: LetterShape, shift: number): boolean {
  return (
    inkPoints(left).some(([x, y]) => windingAt(right.contours, x - shift, y) !== 0) ||
    inkPoints(right).some(([x, y]) => windingAt(left.contours, x + shift, y) !== 0)
  );
}

/** How far within the outline ink is looked for, 1/1000 em. */
const JUST_WITHIN = 0.02;

/** A point of ink just within the middle of each segment. */
function inkPoints({ contours, chunks: { segments } }: LetterShape): [number, number][] {
  const points: [number, number][] = [];
  for (let i = 0; i < segments.length; i += 4) {
    const dx = segments[i + 2]! - segments[i]!,
      dy = segments[i + 3]! - segments[i + 1]!,
      long = Math.sqrt(dx * dx + dy * dy);
    const x = segments[i]! + dx / 2,
      y = segments[i + 1]! + dy / 2,
      sideX = (-dy / long) * JUST_WITHIN,
      sideY = (dx / long) * JUST_WITHIN;
    points.push(windingAt(contours, x + sideX, y + sideY) !== 0 ? [x + sideX, y + sideY] : [x - sideX, y - sideY]);
  }
  return points;
}
