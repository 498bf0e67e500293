/**
 * Means of the white between two sides in which near parts weigh more, over heights in even steps. Used inside the
 * usual range and never shown: what is shown of a gap is its white.
 */
export type NearMean = {
  /** The power is −2 or −1: the higher, the less the nearest parts outweigh the rest. */
  power: -2 | -1;
  /** No gap counts as less than this, 1/1000 em. */
  least: number;
};

export const NEAREST: NearMean = { power: -2, least: 5 };
export const NEAR: NearMean = { power: -1, least: 60 };

/** Heights under the baseline count half. */
function weightAt(index: number, below: number): number {
  return index < below ? 0.5 : 1;
}

/**
 * The mean of `white` at a total, 1/1000 em.
 * @param below how many of the heights lie under the baseline.
 */
export function nearMean(white: Float64Array, below: number, total: number, { power, least }: NearMean): number {
  let weights = 0,
    closeness = 0;
  for (let i = 0; i < white.length; i += 1) {
    const gap = Math.max(least, white[i]! + total);
    const weight = weightAt(i, below);
    weights += weight;
    closeness += power === -2 ? weight / (gap * gap) : weight / gap;
  }
  return power === -2 ? Math.sqrt(weights / closeness) : weights / closeness;
}

/**
 * The total at which the mean is `target`, between −1500 and 1500, by Newton steps inside a bracket; good to 0.01/1000
 * em. A target at or under the least gap has no answer: the lower end of the bracket is given.
 */
export function totalForNearMean(white: Float64Array, below: number, target: number, mean: NearMean): number {
  let low = -1500,
    high = 1500,
    total = 0;
  for (let turn = 0; turn < 60; turn += 1) {
    let weights = 0,
      closeness = 0,
      steepness = 0;
    for (let i = 0; i < white.length; i += 1) {
      const open = white[i]! + total;
      const gap = Math.max(mean.least, open);
      const weight = weightAt(i, below);
      const share = mean.power === -2 ? weight / (gap * gap) : weight / gap;
      weights += weight;
      closeness += share;
      if (open > mean.least) steepness += share / gap;
    }
    const found = mean.power === -2 ? Math.sqrt(weights / closeness) : weights / closeness;
    const miss = target - found;
    if (Math.abs(miss) < 0.005) return total;
    if (miss > 0) low = total;
    else high = total;
    // Both powers have the slope mean · Σ(share / gap) / Σ share.
    const slope = (found * steepness) / closeness;
    const next = slope > 0 ? total + miss / slope : Infinity;
    total = next > low && next < high ? next : (low + high) / 2;
  }
  return total;
}

/**
 * White held between two depths at each height, averaged over the heights: what is there, rather than what is near.
 * 1/1000 em.
 */
export function heldMean(white: Float64Array, below: number, total: number, least: number, most: number): number {
  let weights = 0,
    sum = 0;
  for (let i = 0; i < white.length; i += 1) {
    const weight = weightAt(i, below);
    weights += weight;
    sum += weight * Math.min(most, Math.max(least, white[i]! + total));
  }
  return sum / weights;
}
