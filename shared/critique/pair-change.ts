import type { Spacing } from '@/shared/schemas/spacing';

/** How one pair has moved since a note was written. All in 1/1000 em, tracking and offset together: what a person added. */
export type PairChange = {
  pair: number;
  /** Tracking + offset then; now, or null where the pair is gone from the line. */
  then: number;
  now: number | null;
  moved: number;
  /** Beside the suggestion, where there was one: has it come nearer? `met` is within 1/1000 em. */
  toward: 'met' | 'nearer' | 'same' | 'away' | null;
};

/**
 * Compares a pair then and now. `pairNow` is its index in the present version of the line, null where it is gone.
 * `suggested` is the suggested offset, in the tracking of then.
 */
export function pairChange(
  pair: number,
  then: Spacing,
  now: Spacing | null,
  pairNow: number | null,
  suggested: number | null,
): PairChange {
  const before = added(then, pair);
  const after = now === null || pairNow === null ? null : added(now, pairNow);
  const aim = suggested === null ? null : then.tracking + suggested;
  return {
    pair,
    then: before,
    now: after,
    moved: after === null ? 0 : after - before,
    toward: after === null || aim === null ? null : towardAim(before, after, aim),
  };
}

function added(spacing: Spacing, pair: number): number {
  const offset = spacing.offsets[pair];
  if (offset === undefined)
    throw new RangeError(`The spacing has ${spacing.offsets.length} pairs; pair ${pair + 1} is not among them.`);
  return spacing.tracking + offset;
}

function towardAim(before: number, after: number, aim: number): PairChange['toward'] {
  const missBefore = Math.abs(before - aim);
  const missAfter = Math.abs(after - aim);
  if (missAfter <= 1) return 'met';
  if (missAfter === missBefore) return 'same';
  return missAfter < missBefore ? 'nearer' : 'away';
}
