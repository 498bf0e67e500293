import type { Spacing } from '@/shared/schemas/spacing';
import { median } from '@/shared/stats/median';

/**
 * The spacing whose every total is the median of the lines' totals for that pair. Built-in is the same for all, so the
 * median of tracking + offset is taken. Whole thousandths, halves upwards. Nobody set it: it may be uneven where each line is even.
 * @throws RangeError without lines, or when they have different numbers of pairs.
 */
export function medianSpacing(lines: readonly Spacing[]): Spacing {
  const pairs = lines[0]?.offsets.length ?? 0;
  const odd = lines.find(({ offsets }) => offsets.length !== pairs);
  if (odd)
    throw new RangeError(
      `A median needs lines of one length; one has ${pairs} pairs and another ${odd.offsets.length}.`,
    );
  if (lines.length === 0) throw new RangeError('The median of no lines was asked for.');
  const offsets = Array.from({ length: pairs }, (_, pair) =>
    Math.floor(median(lines.map(({ tracking, offsets: set }) => tracking + set[pair]!)) + 0.5),
  );
  return { tracking: 0, offsets };
}
