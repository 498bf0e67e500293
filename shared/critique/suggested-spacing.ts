import type { Spacing } from '@/shared/schemas/spacing';
import type { Run } from './run';

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
