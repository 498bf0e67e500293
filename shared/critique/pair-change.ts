import type { Spacing } from '@/shared/schemas/spacing';
import { numberText, signed } from '@/shared/text/number';

/**
 * How one pair has moved since a note was written. All in 1/1000 em, tracking and offset together: what a person added.
 */
export type PairChange = {
  pair: number;
  /** Tracking + offset then; now, or null where the pair is gone from the line. */
  then: number;
  now: number | null;
  moved: number;
  /** Compared with the suggestion, if there was one: has it come nearer? `met` is within 1/1000 em. */
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

/**
 * The place of a pair in a later version of its line. `maps` are the versions' pair maps from then to now:
 * maps[k][i] is the place of pair i of one version in the next, null where it is gone.
 */
export function followPair(pair: number, maps: readonly (readonly (number | null)[])[]): number | null {
  let at: number | null = pair;
  for (const map of maps) {
    if (at === null) return null;
    at = map[at] ?? null;
  }
  return at;
}

/** How a pair has changed, in a sentence. @example 'Was −12, now −30 (18 tighter): nearer to the suggestion.' */
export function changeWords({ then, now, moved, toward }: PairChange): string {
  if (now === null) return `Was ${signed(then)}; the pair is no longer in the line.`;
  if (moved === 0) return `${signed(now)}, as it was${toward === 'met' ? ' and as was suggested' : ''}.`;
  const how = `${numberText(Math.abs(moved))} ${moved > 0 ? 'wider' : 'tighter'}`;
  return `Was ${signed(then)}, now ${signed(now)} (${how})${toward === null ? '' : `: ${inWords[toward]}`}.`;
}

/** Whether a pair has come nearer to the reference, in a few words; empty where there is none to compare with. */
export const referenceWords = (reference: PairChange['toward']): string =>
  reference === null ? '' : besideReference[reference];

const besideReference = {
  met: 'within tolerance of the reference',
  nearer: 'nearer to the reference',
  same: 'as far from the reference as before',
  away: 'further from the reference',
} as const;

const inWords = {
  met: 'where it was suggested',
  nearer: 'nearer to the suggestion',
  same: 'as far from the suggestion as before',
  away: 'further from the suggestion',
} as const;
