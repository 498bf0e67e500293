import { heightOfBand } from '@/shared/outline/edge-profile';
import type { LetterShape } from './letter-shape';

/** Gaps under this count as this: crossing is the business of clearance. 1/1000 em. */
const LEAST_GAP = 5;

/** Weight of a band: below the baseline it counts half. */
function bandWeight(band: number): number {
  return heightOfBand(band) > 0 ? 1 : 0.5;
}

/** The white between two letters as seen, band by band, before any offset: both sighted profiles added. 1/1000 em. */
export type SeenGap = {
  white: Float64Array;
  weights: Float64Array;
  weightSum: number;
  nearest: number;
  farthest: number;
};

export function seenGap(left: LetterShape, right: LetterShape): SeenGap {
  const white = left.seen.right.map((value, band) => value + right.seen.left[band]!);
  const weights = white.map((_, band) => bandWeight(band));
  weights[weights.length - 1]! *= left.heights.lastShare;
  let weightSum = 0,
    nearest = Infinity,
    farthest = -Infinity;
  for (let band = 0; band < white.length; band += 1) {
    weightSum += weights[band]!;
    nearest = Math.min(nearest, white[band]!);
    farthest = Math.max(farthest, white[band]!);
  }
  return { white, weights, weightSum, nearest, farthest };
}

/**
 * Apparent gap in 1/1000 em: the gap between two straight stems that would look as open as this pair.
 * √(Σw / Σ w·g⁻²), a mean of the gap in which near parts weigh more, over the sighted profiles.
 * @param total what is added to the advance (built-in + tracking + offset), 1/1000 em.
 */
export function nearGap({ white, weights, weightSum }: SeenGap, total: number): number {
  let closeness = 0;
  for (let band = 0; band < white.length; band += 1) {
    const gap = Math.max(LEAST_GAP, white[band]! + total);
    closeness += weights[band]! / (gap * gap);
  }
  return Math.sqrt(weightSum / closeness);
}

/**
 * The total at which a pair's apparent gap equals `target` (1/1000 em), by Newton steps inside a bracket. The apparent
 * gap rises with the total, so there is one answer. Good to 0.01/1000 em. Returns null when the target is at or under
 * the least gap that is distinguished.
 */
export function totalForNearGap(seen: SeenGap, target: number): number | null {
  if (!(target > LEAST_GAP)) return null;
  const { white, weights, weightSum, nearest, farthest } = seen;
  // With every gap at least the nearest, E ≥ nearest + total: so total = target − nearest is never too small.
  let low = LEAST_GAP - farthest,
    high = target - nearest;
  let total = Math.min(high, Math.max(low, 0));
  for (let turn = 0; turn < 60; turn += 1) {
    let closeness = 0,
      steepness = 0;
    for (let band = 0; band < white.length; band += 1) {
      const open = white[band]! + total;
      const gap = Math.max(LEAST_GAP, open);
      const share = weights[band]! / (gap * gap);
      closeness += share;
      if (open > LEAST_GAP) steepness += share / gap;
    }
    const found = Math.sqrt(weightSum / closeness);
    const miss = target - found;
    if (Math.abs(miss) < 0.002) return total;
    if (miss > 0) low = total;
    else high = total;
    const slope = (found * steepness) / closeness;
    const next = slope > 0 ? total + miss / slope : Infinity;
    total = next > low && next < high ? next : (low + high) / 2;
  }
  return total;
}
