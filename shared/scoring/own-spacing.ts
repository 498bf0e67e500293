import { measureLine } from '@/shared/measure';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import { usualSuggestion } from './usual-suggestion';

/** How far our own headings follow the measure, 1/1000 em. Beyond it the eye of whoever sets them is asked, not a number. */
const MOST_TIGHTENING = -40;
const MOST_OPENING = 15;

/**
 * The spacing that our own headings and example lines are set with: each pair at the nearest end of what half of the
 * designers would give it, within a narrow band; word spaces, figures and punctuation as the face has them.
 */
export function ownSpacing(pack: Pack, pixels: number): Spacing {
  const untouched = { tracking: 0, offsets: pack.builtIn.map(() => 0) };
  const { pairs, line } = measureLine(pack, untouched, { size: { value: pixels, unit: 'px' }, ground: 'light' });
  const offsets = pairs.map((pair) =>
    Math.max(MOST_TIGHTENING, Math.min(MOST_OPENING, usualSuggestion(pair, line) ?? 0)),
  );
  return { tracking: 0, offsets };
}
