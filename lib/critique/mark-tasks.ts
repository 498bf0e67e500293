import type { ScopedData } from '@/lib/data';
import { retryOnConflict } from '@/lib/data/retry';
import { makeAlias } from './alias';

export const firstSlot = 'first';
export const secondSlot = 'second';
export const settledSlot = 'settled';
export type Slot = typeof firstSlot | typeof secondSlot | typeof settledSlot;

/** The tasks of these proofs of a round in one slot, by proof, after making those that are still missing. Two calls at once make each task once. */
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

export type MarkTaskRow = Awaited<ReturnType<typeof tasksFor>> extends Map<string, infer Task> ? Task : never;
