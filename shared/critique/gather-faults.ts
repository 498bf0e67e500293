import * as z from 'zod/mini';
import { grouped } from '@/shared/list/grouped';
import type { PairFault } from './faults';

/** A fault that several settings of one line share; `at` are the places of those settings in the list they were gathered from. */
export const sharedFaultSchema = z.strictObject({
  specimenVersionId: z.string(),
  first: z.int(),
  last: z.int(),
  fault: z.enum(['wide', 'tight', 'left', 'right', 'touching']),
  at: z.array(z.int()),
});
export type SharedFault = z.infer<typeof sharedFaultSchema>;

type Setting = { specimenVersionId: string; faults: readonly Pick<PairFault, 'first' | 'last' | 'fault'>[] };

/** Faults that at least two settings have at the same pair, the one with most settings first; of equals, the one that comes first in the line. */
export function gatherFaults(settings: readonly Setting[]): SharedFault[] {
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
