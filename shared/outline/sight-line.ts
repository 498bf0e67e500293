import { STEP } from './grid';

/** How much deeper one may look for each unit up or down: a bay counts as deep as 1.5 times its height from its rim. */
export const SIGHT_SLOPE = 1.5;

/**
 * The profile as it is seen: at each height the least of white(y') + 1.5·|y − y'| over all heights y'.
 * It bounds how deep a bay counts and fills bands without ink. Two sweeps, up and down.
 */
export function sighted(profile: Float64Array, slope = SIGHT_SLOPE): Float64Array {
  const seen = Float64Array.from(profile);
  const rise = slope * STEP;
  for (let i = 1; i < seen.length; i += 1) seen[i] = Math.min(seen[i]!, seen[i - 1]! + rise);
  for (let i = seen.length - 2; i >= 0; i -= 1) seen[i] = Math.min(seen[i]!, seen[i + 1]! + rise);
  return seen;
}
