import * as z from 'zod/mini';
import { grouped } from '@/shared/grouped';
import type { StoredFinding } from '@/shared/schemas/finding';
import type { Fault } from '@/shared/schemas/note';
import type { StoredComparison, StoredMeasure } from '@/shared/schemas/stored-figures';
import { sayFinding } from '@/shared/wording/finding-words';

/**
 * What the measures find at a pair (or, for a letter out of place, at the two pairs beside it); `share` is how far it
 * is out: in tolerances, or in surprise.
 */
export type PairFault = { first: number; last: number; fault: Exclude<Fault, ''>; share: number; sentence: string };

/**
 * The conspicuous pairs, worst first: compared with the nearest reference where there is one, else with the usual
 * range. Letters that touch come first, unless the nearest reference lets them touch as well. A displaced letter is one
 * fault, shown at the pairs on both sides of it. For a marker, on request.
 */
export function faultsOf(measure: StoredMeasure | null, comparison: StoredComparison | null): PairFault[] {
  const touching = (measure?.pairs ?? [])
    .filter(
      ({ contact, index }) =>
        (contact === 'touching' || contact === 'crossing') && !comparison?.meantContacts.includes(index),
    )
    .map(({ index }) => ({ first: index, last: index, fault: 'touching' as const, share: Infinity, sentence: '' }));
  const out = comparison?.nearest != null ? fromReference(comparison) : fromLine(measure);
  const faults = [...touching, ...out.filter(({ first }) => !touching.some((one) => one.first === first))];
  return faults.sort((one, other) => (one.share === other.share ? one.first - other.first : other.share - one.share));
}

function fromReference({ pairs, findings }: StoredComparison): PairFault[] {
  const misplaced = findings.filter(({ kind }) => kind === 'misplaced');
  const covered = new Set(misplaced.flatMap(({ from, to }) => (from === null || to === null ? [] : [from, to])));
  const letters = misplaced.flatMap((finding): PairFault[] => {
    const { from, to, direction } = finding;
    const { sentence } = sayFinding(finding);
    const pair = pairs.find(({ index }) => index === from);
    return pair && to !== null && (direction === 'left' || direction === 'right')
      ? [{ first: pair.index, last: to, fault: direction, share: shareOf(pair.rest, pair.tolerance), sentence }]
      : [];
  });
  const gaps = pairs
    .filter(({ within, index }) => !within && !covered.has(index))
    .map(({ index, rest, tolerance }): PairFault => ({
      first: index,
      last: index,
      fault: rest > 0 ? 'wide' : 'tight',
      share: shareOf(rest, tolerance),
      sentence: deviationSentence(findings, index),
    }));
  return [...letters, ...gaps];
}

function deviationSentence(findings: readonly StoredFinding[], pair: number): string {
  const found = findings.find(({ kind, from }) => kind === 'deviation' && from === pair);
  return found ? sayFinding(found).sentence : '';
}

/**
 * By the line itself: what is outside the usual range, the greatest surprise first. What engine 1 measured has no such
 * range.
 */
const fromLine = (measure: StoredMeasure | null): PairFault[] =>
  (measure?.findings ?? []).flatMap((finding): PairFault[] => {
    if ('sentence' in finding || (finding.kind !== 'usual' && finding.kind !== 'misplaced')) return [];
    const { from, to, direction } = finding;
    return [
      {
        first: from,
        last: to,
        fault: direction,
        share: surpriseAt(measure!, from, to),
        sentence: sayFinding(finding).sentence,
      },
    ];
  });

function surpriseAt({ pairs }: StoredMeasure, first: number, last: number): number {
  return Math.max(
    ...pairs.filter(({ index }) => index >= first && index <= last).map(({ surprise }) => Math.abs(surprise ?? 0)),
  );
}

const shareOf = (value: number, tolerance: number): number => Math.abs(value) / Math.max(tolerance, 1);

/**
 * A fault that several settings of one line share; `at` are the places of those settings in the list they were gathered
 * from.
 */
export const sharedFaultSchema = z.strictObject({
  specimenVersionId: z.string(),
  first: z.int(),
  last: z.int(),
  fault: z.enum(['wide', 'tight', 'left', 'right', 'touching']),
  at: z.array(z.int()),
});
type SharedFault = z.infer<typeof sharedFaultSchema>;

type LineFaults = { specimenVersionId: string; faults: readonly Pick<PairFault, 'first' | 'last' | 'fault'>[] };

/**
 * Faults that at least two spacings have at the same pair, the most frequent first; of equals, the first in the line.
 */
export function gatherFaults(settings: readonly LineFaults[]): SharedFault[] {
  const each = settings.flatMap(({ specimenVersionId, faults }, at) =>
    faults.map(({ first, last, fault }) => ({ specimenVersionId, first, last, fault, at })),
  );
  return [...grouped(each, faultKeyIn).values()]
    .map((group) => ({ ...group[0]!, at: group.map(({ at }) => at) }))
    .filter(({ at }) => at.length > 1)
    .sort((one, other) => other.at.length - one.at.length || one.first - other.first || one.last - other.last);
}

const faultKeyIn = (one: { specimenVersionId: string; first: number; last: number; fault: string }) =>
  `${one.specimenVersionId} ${faultKey(one)}`;

/** How a fault at a place is named in an address. @example 'wide-2', 'left-2-3' */
export const faultKey = ({ first, last, fault }: { first: number; last: number; fault: string }): string =>
  `${fault}-${first}${first === last ? '' : `-${last}`}`;

/** A fault in a few words, as it follows its letters. @example 'VO, more than the tolerance wider' */
export const faultWords: Record<Exclude<Fault, ''>, string> = {
  wide: 'more than the tolerance wider',
  tight: 'more than the tolerance tighter',
  left: 'the letter in the middle too far left',
  right: 'the letter in the middle too far right',
  touching: 'touching',
};
