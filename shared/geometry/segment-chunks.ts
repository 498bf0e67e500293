import type { Contours } from './polygon';

/** An outline's segments in short runs, each with its box, so that far runs are passed over at once. */
export type SegmentChunks = {
  /** x0 y0 x1 y1 per segment. */
  segments: Float64Array;
  /** left bottom right top per chunk of `CHUNK` segments. */
  boxes: Float64Array;
};

export const CHUNK = 8;

export function segmentChunks(contours: Contours): SegmentChunks {
  const numbers: number[] = [];
  const boxes: number[] = [];
  for (const points of contours) {
    for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
      numbers.push(points[j]!, points[j + 1]!, points[i]!, points[i + 1]!);
    }
  }
  for (let start = 0; start < numbers.length; start += CHUNK * 4) {
    let left = Infinity,
      bottom = Infinity,
      right = -Infinity,
      top = -Infinity;
    for (let i = start; i < Math.min(numbers.length, start + CHUNK * 4); i += 2) {
      left = Math.min(left, numbers[i]!);
      right = Math.max(right, numbers[i]!);
      bottom = Math.min(bottom, numbers[i + 1]!);
      top = Math.max(top, numbers[i + 1]!);
    }
    boxes.push(left, bottom, right, top);
  }
  return { segments: Float64Array.from(numbers), boxes: Float64Array.from(boxes) };
}
