import { OFFSET_LIMIT } from '@/shared/editing/document';
import type { StoredComparison, StoredMeasure } from '@/shared/schemas/stored-figures';
import type { Spacing } from '@/shared/schemas/spacing';
import type { Run } from './run';

/**
 * The offsets (whole 1/1000 em) at which the pairs of a run would stand where the nearest reference has them, the line's
 * own tightness left as it is; without a reference, at the middle of the line itself. Null where neither says anything.
 */
export function measuredSuggestion(
  measure: StoredMeasure | null,
  comparison: StoredComparison | null,
  spacing: Spacing,
  { first, last }: Run,
): number[] | null {
  const held = comparison?.nearest != null;
  const aims = spacing.offsets.slice(first, last + 1).map((offset, step) => {
    if (held) {
      const rest = comparison.pairs.find(({ index }) => index === first + step)?.rest;
      return rest === undefined ? null : offset - rest;
    }
    return measure?.pairs.find(({ index }) => index === first + step)?.suggestion ?? null;
  });
  return aims.every((aim) => aim !== null)
    ? aims.map((aim) => Math.min(OFFSET_LIMIT, Math.max(-OFFSET_LIMIT, Math.floor(aim + 0.5))))
    : null;
}
