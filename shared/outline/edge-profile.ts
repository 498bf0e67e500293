import type { Contours } from '@/shared/geometry/polygon';

/** Letters are looked at in level bands `STEP` high, from `BOTTOM` up. 1/1000 em. */
export const STEP = 5;
export const BOTTOM = -260;
/** No face is looked at higher than this, whatever it says of itself. 1/1000 em. */
const HIGHEST = 3000;

/** How much deeper one may look for each unit up or down: a bay counts as deep as 1.5 times its height from its rim. */
const SIGHT_SLOPE = 1.5;

/** The bands of a face, from `BOTTOM` to the top of its d. */
export type Heights = {
  bands: number;
  /** How much of the topmost band is under the top, 0 to 1; every other band counts whole. */
  lastShare: number;
};

export function heightsUpTo(top: number): Heights {
  const span = Math.max(STEP, Math.min(top, HIGHEST) - BOTTOM);
  const bands = -Math.floor(-span / STEP);
  return { bands, lastShare: span / STEP - (bands - 1) };
}

/** The middle height of a band, in 1/1000 em over the baseline. */
export function heightOfBand(band: number): number {
  return BOTTOM + (band + 0.5) * STEP;
}

/** White on each side of a letter, one value a band, in 1/1000 em. */
export type EdgeProfile = {
  /** From the letter's origin to its leftmost ink. */
  left: Float64Array;
  /** From its rightmost ink to its advance. */
  right: Float64Array;
};

/**
 * The edges as drawn: the least white within each band's whole height, so that no spike between two lines is
 * overlooked; Infinity where a band meets no ink. Band i runs from bottom + i·STEP.
 */
export function drawnEdges(contours: Contours, advance: number, bands: number, bottom = BOTTOM): EdgeProfile {
  const left = new Float64Array(bands).fill(Infinity),
    right = new Float64Array(bands).fill(Infinity);
  eachSegment(contours, (x0, y0, x1, y1) => {
    const low = Math.min(y0, y1),
      high = Math.max(y0, y1);
    // A level piece reaches no farther than the pieces it joins, and it belongs to the band where those are.
    if (low === high) return;
    const last = Math.min(bands - 1, Math.floor((high - bottom) / STEP));
    for (let band = Math.max(0, Math.floor((low - bottom) / STEP)); band <= last; band += 1) {
      const floor = Math.max(low, bottom + band * STEP),
        ceiling = Math.min(high, bottom + (band + 1) * STEP);
      // Ink that only touches a band's lower rim belongs to the band below.
      if (ceiling <= floor) continue;
      const xa = x0 + ((x1 - x0) * (floor - y0)) / (y1 - y0),
        xb = x0 + ((x1 - x0) * (ceiling - y0)) / (y1 - y0);
      left[band] = Math.min(left[band]!, xa, xb);
      right[band] = Math.min(right[band]!, advance - xa, advance - xb);
    }
  });
  return { left, right };
}

/**
 * The edges as they are seen: at the middle height y of each band the least of white(y') + 1.5·|y − y'| over all ink of
 * the letter. That bounds how deep a bay counts, and fills heights without ink. It is exact, and it changes as smoothly
 * as the letter is moved: ink counts from where it is, not from the band it falls in.
 */
export function seenEdges(contours: Contours, advance: number, { bands }: Heights): EdgeProfile {
  const left = new Float64Array(bands).fill(Infinity),
    right = new Float64Array(bands).fill(Infinity);
  const see = (band: number, x: number, away: number) => {
    left[band] = Math.min(left[band]!, x + SIGHT_SLOPE * away);
    right[band] = Math.min(right[band]!, advance - x + SIGHT_SLOPE * away);
  };
  eachSegment(contours, (x0, y0, x1, y1) => {
    // Along a straight piece the least is at one of its ends or level with the eye.
    const place = (y1 - BOTTOM) / STEP - 0.5;
    const under = Math.min(bands - 1, Math.max(0, Math.floor(place))),
      over = Math.min(bands - 1, under + 1);
    see(under, x1, Math.abs(heightOfBand(under) - y1));
    see(over, x1, Math.abs(heightOfBand(over) - y1));
    const from = Math.max(0, -Math.floor(-((Math.min(y0, y1) - BOTTOM) / STEP - 0.5))),
      to = Math.min(bands - 1, Math.floor((Math.max(y0, y1) - BOTTOM) / STEP - 0.5));
    if (y0 === y1) return;
    for (let band = from; band <= to; band += 1) see(band, x0 + ((x1 - x0) * (heightOfBand(band) - y0)) / (y1 - y0), 0);
  });
  return { left: swept(left), right: swept(right) };
}

/** Carries what is seen at one height to all others, up and down. */
function swept(seen: Float64Array): Float64Array {
  const rise = SIGHT_SLOPE * STEP;
  for (let i = 1; i < seen.length; i += 1) seen[i] = Math.min(seen[i]!, seen[i - 1]! + rise);
  for (let i = seen.length - 2; i >= 0; i -= 1) seen[i] = Math.min(seen[i]!, seen[i + 1]! + rise);
  return seen;
}

function eachSegment(contours: Contours, visit: (x0: number, y0: number, x1: number, y1: number) => void): void {
  for (const points of contours) {
    for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
      visit(points[j]!, points[j + 1]!, points[i]!, points[i + 1]!);
    }
  }
}
