import { centreOf, type UsualRange } from './range';

/** A line as set, all lists a pair long; lengths in 1/1000 em. */
export type SetLine = {
  /** Null where the usual range is silent. */
  ranges: readonly (UsualRange | null)[];
  /** Built-in and offset and tracking. */
  totals: readonly number[];
  tracking: number;
  /** Apparent gaps and clearances as set. */
  gaps: readonly number[];
  clearances: readonly number[];
  /** Least white between H and H, and the face's reference gap; null for a face without control letters. */
  stemGap: number | null;
  referenceGap: number | null;
  /** The size it is set at, px. */
  sizePx: number;
};

type PairJudgement = {
  /**
   * How far beyond what is usual, in what is usual of such pairs; above 0 wider. It orders what to look at and is no
   * verdict.
   */
  surprise: number;
  /** Beyond the nine tenths of designers by more than can be overlooked. */
  outside: boolean;
};

export type LineJudgement = {
  /** How much wider (above 0) or tighter the whole line is than usual, 1/1000 em. */
  tightness: number;
  /** Null where the range is silent, and for every pair of a line that is set by other rules. */
  pairs: (PairJudgement | null)[];
};

/** From this many letter pairs on, the pairs themselves say how tight a line is. */
const ENOUGH = 6;
/** A line this much of the stem gap tighter, or with this share of its pairs this near, is set by contact. */
const SET_TIGHT = 0.25;
const MANY_NEAR = 1 / 3;
const NEAR = 0.2;

export function judgeLine(line: SetLine): LineJudgement {
  const tightness = tightnessOf(line);
  if (line.referenceGap === null || isSetByContact(line, tightness))
    return { tightness, pairs: line.ranges.map(() => null) };
  const unit = line.referenceGap;
  const pairs = line.ranges.map((range, index): PairJudgement | null => {
    if (range === null) return null;
    const apart = line.totals[index]! - tightness;
    return {
      surprise: surpriseOf(range, apart, unit),
      outside: isOutside(range, apart, allowance(range, line.gaps[index]!, line.sizePx)),
    };
  });
  return { tightness, pairs };
}

/**
 * Surprise of a total (1/1000 em, the line's tightness taken out): the miss from the centre of the range, over a tenth
 * of the face's reference gap and two thirds of the nine tenths on the side missed.
 */
export function surpriseOf(range: UsualRange, total: number, referenceGap: number): number {
  const centre = centreOf(range),
    miss = total - centre;
  const side = Math.max(0, miss > 0 ? range.high - centre : centre - range.low);
  return miss / (0.1 * referenceGap + (2 / 3) * side);
}

/**
 * Tightness: tracking, and what is common to the pairs' remaining misses, as a weighted median in which a pair counts
 * the more the narrower its range is, with three zeros among them, so that unkerned diagonals don't blame the one good
 * pair. A line of fewer letter pairs is as tight as its tracking says.
 */
export function tightnessOf({ ranges, totals, tracking }: Pick<SetLine, 'ranges' | 'totals' | 'tracking'>): number {
  const misses: { value: number; weight: number }[] = [];
  ranges.forEach((range, index) => {
    if (range === null) return;
    const value = totals[index]! - centreOf(range) - tracking;
    misses.push({ value, weight: 20 / (20 + (range.high - range.low) / 3) });
  });
  if (misses.length < ENOUGH) return tracking;
  for (let i = 0; i < 3; i += 1) misses.push({ value: 0, weight: 1 });
  return tracking + weightedMedian(misses);
}

/** How far beyond the nine tenths a total may lie before it is called outside, 1/1000 em. */
function allowance(range: UsualRange, gap: number, sizePx: number): number {
  const least = range.leftAlone >= 0.5 ? 20 : 10;
  return Math.max(least, 500 / sizePx, 0.05 * gap);
}

function isOutside(range: UsualRange, total: number, allowed: number): boolean {
  return total > range.high + allowed || total < range.low - allowed;
}

/** A line set tight, not touching: contact and equal clearance are its rule, and no range. */
function isSetByContact({ ranges, clearances, stemGap }: SetLine, tightness: number): boolean {
  if (stemGap === null) return false;
  if (tightness < -SET_TIGHT * stemGap) return true;
  const letters = clearances.filter((_, index) => ranges[index] !== null);
  // One near pair of a short line is a pair that is near, and no way of setting the line.
  const near = letters.filter((clear) => clear < NEAR * stemGap).length;
  return near > 1 && near > MANY_NEAR * letters.length;
}

function weightedMedian(values: { value: number; weight: number }[]): number {
  const sorted = [...values].sort((a, b) => a.value - b.value);
  let whole = 0;
  for (const { weight } of sorted) whole += weight;
  let sum = 0;
  for (let i = 0; i < sorted.length; i += 1) {
    sum += sorted[i]!.weight;
    if (sum > whole / 2) return sorted[i]!.value;
    if (sum === whole / 2) return (sorted[i]!.value + sorted[i + 1]!.value) / 2;
  }
  return 0;
}
