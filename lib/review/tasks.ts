import { randomInt } from 'node:crypto';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict } from '@/lib/data/retry';
import { isSampled } from '@/lib/rows/exercise';
import type { SecondState } from '@/shared/marking/marks';
import type { SecondMarking } from '@/shared/schemas/mark';
import { plainSigns as signs } from '@/shared/text/plain-signs';

export const firstSlot = 'first';
export const secondSlot = 'second';
export const settledSlot = 'settled';
type Slot = typeof firstSlot | typeof secondSlot | typeof settledSlot;

/**
 * The tasks of these proofs of a round in one slot, by proof, after making those that are still missing. Two calls at
 * once make each task once.
 */
export const tasksFor = (
  data: ScopedData,
  roundId: string,
  proofIds: readonly string[],
  now: Date,
  slot: Slot = firstSlot,
) =>
  retryOnConflict(async () => {
    const there = await data.markTasks.ofProofs(proofIds, slot);
    const known = new Set(there.map(({ proofId }) => proofId));
    const missing = proofIds.filter((id) => !known.has(id));
    if (missing.length > 0)
      await data.markTasks.create(
        roundId,
        missing.map((proofId) => ({ proofId, alias: makeAlias() })),
        slot,
        now,
      );
    const all = missing.length > 0 ? await data.markTasks.ofProofs(proofIds, slot) : there;
    return new Map(all.map((task) => [task.proofId, task]));
  });

export type MarkTaskRow = Awaited<ReturnType<typeof tasksFor>> extends Map<string, infer Row> ? Row : never;

/** A random name: `K7M-2QX`. 25^6 = 244 million of them; a clash is refused by the unique key and tried again. */
function makeAlias(pick: (below: number) => number = randomInt): string {
  const some = () => Array.from({ length: 3 }, () => signs[pick(signs.length)]).join('');
  return `${some()}-${some()}`;
}

/** How a student is named to a marker: by the alias as long as names are hidden, and never by both. */
export function shownAs(who: { name: string | null; alias: string }, hidden: boolean): string {
  return hidden ? who.alias : (who.name ?? `Erased person ${who.alias}`);
}

/** A proof's token in an address: where names are hidden, the alias, since an id reveals when it was made. */
export const tokenOf = (task: { proofId: string; alias: string }, hidden: boolean): string =>
  hidden ? task.alias : task.proofId;

type Task = { state: string; markerId: string | null };

/** How far the second marking of a proof is. One that was begun stays, whatever the round's setting becomes. */
export function secondState(
  proofId: string,
  { first, second }: { first?: Task | null; second?: Task | null },
  setting: SecondMarking,
): SecondState {
  if (first?.state === 'done' && second?.state === 'done') return 'done';
  return isSampled(proofId, setting) || (second?.markerId ?? null) !== null ? 'waits' : 'none';
}

/**
 * What a member at the desk may see of the marks and notes of a proof: all of them, those of their own marking, or
 * none. While two mark a proof, neither sees the other's work until both have finished, and no other member sees
 * either's at the desk, since any of them may still become the second marker.
 */
type Sight = 'all' | 'own' | 'none';

export function sightOf(state: SecondState, task: Task | null, me: string): Sight {
  if (state !== 'waits') return 'all';
  return task === null || task.markerId === null || task.markerId === me ? 'own' : 'none';
}
