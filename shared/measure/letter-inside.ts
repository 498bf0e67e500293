import type { Polyline } from './drawing';
import type { PreparedLine } from './prepared-line';

/** Slices of this height draw a round without corners, 1/1000 em. */
const SLICE = 4;

/**
 * The span from a letter's leftmost to its rightmost ink, slice by slice, as a closed polygon in 1/1000 em (y up, x from
 * the letter's origin). With the letter drawn over it, what shows is the white inside the letter.
 */
export function letterInside(line: PreparedLine, letter: number): Polyline {
  const { box, chunks } = line.letters[letter]!;
  const left: Polyline = [],
    right: Polyline = [];
  const count = Math.max(2, Math.floor((box.top - box.bottom) / SLICE));
  for (let step = 1; step < count; step += 1) {
    const y = box.bottom + ((box.top - box.bottom) * step) / count;
    const [from, to] = extremes(chunks.segments, y);
    if (!(from <= to)) continue;
    left.push(from, y);
    right.push(to, y);
  }
  for (let i = right.length - 2; i >= 0; i -= 2) left.push(right[i]!, right[i + 1]!);
  return left;
}

function extremes(segments: Float64Array, y: number): [number, number] {
  let least = Infinity,
    most = -Infinity;
  for (let i = 0; i < segments.length; i += 4) {
    const x0 = segments[i]!,
      y0 = segments[i + 1]!,
      x1 = segments[i + 2]!,
      y1 = segments[i + 3]!;
    if (y < Math.min(y0, y1) || y >= Math.max(y0, y1)) continue;
    const x = x0 + ((x1 - x0) * (y - y0)) / (y1 - y0);
    least = Math.min(least, x);
    most = Math.max(most, x);
  }
  return [least, most];
}
