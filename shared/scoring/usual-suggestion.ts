import { round2 } from '@/shared/measure/round';
import type { UsualRange } from '@/shared/usual-range/range';

/** A pair as set, and the line it is in; lengths in 1/1000 em. */
type Pair = { usual: UsualRange | null; surprise: number | null; total: number; offset: number; clearance: number };
type Line = { tightness: number; stemGap: number | null };

/** No suggestion closes a pair nearer than this share of the stem gap. */
const FLOOR = 0.2;

/**
 * How far a pair is from the half range that designers give it, the line's tightness left as it is: above 0 it is
 * wider. 0 inside the half range; null where the range is silent.
 */
export function beyondHalfRange(
  { usual, surprise, total }: Pick<Pair, 'usual' | 'surprise' | 'total'>,
  tightness: number,
): number | null {
  if (usual === null || surprise === null) return null;
  const own = total - tightness;
  if (own > usual.halfHigh) return round2(own - usual.halfHigh);
  if (own < usual.halfLow) return round2(own - usual.halfLow);
  return 0;
}

/**
 * The offset at the nearest end of the half range, stopped where letters would nearly meet; null where nothing is to be
 * done.
 */
export function usualSuggestion(pair: Pair, { tightness, stemGap }: Line): number | null {
  const beyond = beyondHalfRange(pair, tightness);
  if (beyond === null || beyond === 0) return null;
  const room = Math.max(0, pair.clearance - FLOOR * (stemGap ?? 0));
  const change = beyond > 0 ? -Math.min(beyond, room) : -beyond;
  const offset = Math.floor(pair.offset + change + 0.5);
  return offset === pair.offset ? null : offset;
}
