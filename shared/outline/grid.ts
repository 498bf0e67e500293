/**
 * The heights at which letters are looked at: bands `STEP` high from `BOTTOM` to the top of d, in 1/1000 em.
 * Band i covers BOTTOM + i·STEP to BOTTOM + (i+1)·STEP.
 */
export const STEP = 20;
export const BOTTOM = -260;

/** Number of bands up to a height (the measured top of d), at least one. */
export function bandsUpTo(top: number): number {
  return Math.max(1, -Math.floor(-(top - BOTTOM) / STEP));
}

/** The middle height of a band, in 1/1000 em over the baseline. */
export function heightOfBand(band: number): number {
  return BOTTOM + (band + 0.5) * STEP;
}
