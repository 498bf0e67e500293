import type { Contours } from './flatten';
import { BOTTOM, STEP } from './grid';

/** White on each side of a letter, one value a band, in 1/1000 em; Infinity where a band meets no ink. */
export type EdgeProfile = {
  /** From the letter's origin to its leftmost ink. */
  left: Float64Array;
  /** From its rightmost ink to its advance. */
  right: Float64Array;
};

/**
 * The edge profile of an outline: the least white within each band's whole height, not at one line in it,
 * so that no spike between two lines is overlooked.
 */
export function edgeProfile(contours: Contours, advance: number, bands: number): EdgeProfile {
  const least = new Float64Array(bands).fill(Infinity);
  const most = new Float64Array(bands).fill(-Infinity);
  for (const points of contours) {
    for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
      addSegment(least, most, points[j]!, points[j + 1]!, points[i]!, points[i + 1]!);
    }
  }
  return { left: least, right: most.map((x) => advance - x) };
}

/** Widens every band that a segment passes through by the part of the segment inside it. */
function addSegment(least: Float64Array, most: Float64Array, x0: number, y0: number, x1: number, y1: number) {
  const low = Math.min(y0, y1),
    high = Math.max(y0, y1);
  const first = Math.max(0, Math.floor((low - BOTTOM) / STEP));
  const last = Math.min(least.length - 1, Math.floor((high - BOTTOM) / STEP));
  for (let band = first; band <= last; band += 1) {
    const floor = Math.max(low, BOTTOM + band * STEP),
      ceiling = Math.min(high, BOTTOM + (band + 1) * STEP);
    // Ink that only touches the band's lower rim belongs to the band below.
    if (ceiling === floor && floor === BOTTOM + band * STEP && low < floor) continue;
    const xa = high === low ? x0 : x0 + ((x1 - x0) * (floor - y0)) / (y1 - y0);
    const xb = high === low ? x1 : x0 + ((x1 - x0) * (ceiling - y0)) / (y1 - y0);
    least[band] = Math.min(least[band]!, xa, xb);
    most[band] = Math.max(most[band]!, xa, xb);
  }
}
