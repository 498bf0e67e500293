import { OFFSET_LIMIT } from '@/shared/editing/document';
import type { Run, Spacing } from '@/shared/schemas/spacing';
import type { StoredComparison, StoredMeasure } from '@/shared/schemas/stored-figures';
import { usualSuggestion } from '@/shared/scoring/usual-suggestion';

/**
 * The spacing with a suggestion put in place: the run's offsets are replaced, all else stays,
 * so everything to the right of a changed pair moves with it. Without a run the suggestion holds one offset a pair.
 * @throws RangeError when the suggestion has another number of offsets than the run.
 */
export function suggestedSpacing(spacing: Spacing, run: Run | null, suggestion: readonly number[]): Spacing {
  const first = run?.first ?? 0;
  const count = run === null ? spacing.offsets.length : run.last - run.first + 1;
  if (suggestion.length !== count)
    throw new RangeError(`The suggestion has ${suggestion.length} offsets where the note speaks of ${count} pairs.`);
  return {
    tracking: spacing.tracking,
    offsets: spacing.offsets.map((offset, index) => suggestion[index - first] ?? offset),
  };
}

/** What the pairs of a run have now: where a suggestion starts before it is nudged. */
export const offsetsOf = (spacing: Spacing, run: Run | null): number[] =>
  run === null ? [...spacing.offsets] : spacing.offsets.slice(run.first, run.last + 1);

/**
 * The offsets (whole 1/1000 em) that bring the pairs of a run to the nearest reference, the line's own tightness left
 * as it is; without a reference, to the nearest end of what designers usually give them. Null where there is no
 * suggestion for any of them.
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
    const pair = measure?.pairs.find(({ index }) => index === first + step);
    return pair ? usualSuggestion(pair, measure!.line) : null;
  });
  if (aims.every((aim) => aim === null)) return null;
  return aims.map((aim, step) =>
    Math.min(OFFSET_LIMIT, Math.max(-OFFSET_LIMIT, Math.floor((aim ?? spacing.offsets[first + step]!) + 0.5))),
  );
}
