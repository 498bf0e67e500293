import { measureLine } from './measure-line';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';

/** How far our own headings follow the measure, 1/1000 em. Beyond it they are set by eye. */
const MOST_TIGHTENING = -40;
const MOST_OPENING = 15;

/**
 * The spacing that our own headings and example lines are set with: each pair of letters at the line's centre, within a
 * narrow band; word spaces and punctuation as the face has them.
 */
export function ownSpacing(pack: Pack, pixels: number): Spacing {
  const untouched = { tracking: 0, offsets: pack.builtIn.map(() => 0) };
  const { pairs } = measureLine(pack, untouched, { size: { value: pixels, unit: 'px' }, ground: 'light' });
  const offsets = pairs.map((pair) =>
    pair.suggestion === null || pair.wordSpace > 0 || !['letters', 'capitals'].includes(pair.group)
      ? 0
      : Math.max(MOST_TIGHTENING, Math.min(MOST_OPENING, pair.suggestion)),
  );
  return { tracking: 0, offsets };
}
