import type { PairMeasure } from '@/shared/schemas/measure';

/** A pair nearer than this share of the stem gap stands at its floor: it can't close further. */
const FLOOR = 0.2;

/**
 * Which way a pair may be called wider or tighter than usual: it is outside, and the white one sees errs the same way
 * against the line. So a pair is never called tighter while its white is wide, nor wider when its letters nearly meet.
 */
export function spokenOutside(
  pair: Pick<PairMeasure, 'outside' | 'surprise' | 'apparentGap' | 'reference' | 'clearance'>,
  stemGap: number | null,
): 'wider' | 'tighter' | null {
  if (!pair.outside || pair.surprise === null || pair.reference === null) return null;
  const white = pair.apparentGap - pair.reference;
  if (pair.surprise < 0) return white < 0 ? 'tighter' : null;
  return white > 0 && pair.clearance > FLOOR * (stemGap ?? 0) ? 'wider' : null;
}
