import type { LineMeasure, PairMeasure } from '@/shared/schemas/measure';

/** A pair nearer than this share of the stem gap is at its limit: it can't close further. */
const FLOOR = 0.2;
/**
 * White that is this share of the line's middle to the other side vetoes the range. Sooner for a gap that would be
 * called tight, since many gaps are left open by omission, and display setters close them.
 */
const AGAINST = { wider: 0.1, tighter: 0.05 };

/** What is needed of a line: its stem gap, the gap its face gives, and how tight it is set. 1/1000 em. */
type Line = Pick<LineMeasure['line'], 'stemGap' | 'faceReference' | 'tightness'>;

/**
 * In which direction a pair may be called wider or tighter than usual: it is outside, and the visible white doesn't
 * contradict it. White can't know what can't be closed, so it needn't agree; but a pair is never called tighter while
 * it holds clearly more white than the middle of its line, nor wider while it holds clearly less or its letters nearly
 * meet.
 */
export function spokenOutside(
  pair: Pick<PairMeasure, 'outside' | 'surprise' | 'apparentGap' | 'reference' | 'clearance'>,
  line: Line,
): 'wider' | 'tighter' | null {
  const middle = whiteMiddle(pair, line);
  if (!pair.outside || pair.surprise === null || middle === null) return null;
  const more = (pair.apparentGap - middle) / middle;
  if (pair.surprise < 0) return more <= AGAINST.tighter ? 'tighter' : null;
  return more >= -AGAINST.wider && pair.clearance > FLOOR * (line.stemGap ?? 0) ? 'wider' : null;
}

/**
 * What a pair's white is held against: the middle of its line; in a line too short for one what the face gives, as
 * tight as the line.
 */
export function whiteMiddle(
  { reference }: Pick<PairMeasure, 'reference'>,
  { faceReference, tightness }: Pick<Line, 'faceReference' | 'tightness'>,
): number | null {
  return reference ?? (faceReference === null ? null : faceReference + tightness);
}
