import type { Yardstick } from '@/shared/schemas/finding';
import type { LineMeasure, PairMeasure } from '@/shared/schemas/measure';

/** Under this many letter pairs there is no spread, no headline and no proposal. */
export const ENOUGH_PAIRS = 6;

/** Pairs of letters, which evenness is judged on; figures, punctuation and word spaces have rules of their own. */
export function letterPairs({ pairs }: LineMeasure): PairMeasure[] {
  return pairs.filter(({ group }) => group === 'letters' || group === 'capitals');
}

/** Where a finding about one pair is, and its two letters. */
export function atPair(pair: PairMeasure): { from: number; to: number; letters: [string, string] } {
  return { from: pair.index, to: pair.index, letters: [pair.left, pair.right] };
}

/** The place of a finding about the whole line. */
export const WHOLE_LINE = { from: null, to: null } as const;

/** What differences of a line are held against in words: stem to stem, never from serif to serif; else a counter. */
export function yardstick(stemToStem: number | null, counter: number | null): Yardstick {
  if (stemToStem !== null && stemToStem > 0) return { of: 'stems', length: stemToStem };
  if (counter !== null && counter > 0) return { of: 'counter', length: counter };
  return null;
}

export function yardstickOf({ line }: LineMeasure): Yardstick {
  return yardstick(line.stemToStem, line.faceCounter);
}

export function wideOrTight(value: number): 'wide' | 'tight' {
  return value > 0 ? 'wide' : 'tight';
}
