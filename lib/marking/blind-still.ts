import type { ScopedData } from '@/lib/data';
import { firstSlot, secondSlot } from '@/lib/critique/mark-tasks';
import { secondMarkingOf } from './second-sample';
import { secondState } from './second-state';

/** Those of these proofs that two are marking without each other: on a page about many, a marker reads only their own notes on them. */
export async function blindStill(
  data: ScopedData,
  round: { secondMarker: string },
  proofIds: readonly string[],
): Promise<ReadonlySet<string>> {
  const [firsts, seconds] = await Promise.all([
    data.markTasks.ofProofs(proofIds, firstSlot),
    data.markTasks.ofProofs(proofIds, secondSlot),
  ]);
  const first = new Map(firsts.map((task) => [task.proofId, task]));
  const second = new Map(seconds.map((task) => [task.proofId, task]));
  const setting = secondMarkingOf(round);
  return new Set(
    proofIds.filter((id) => secondState(id, { first: first.get(id), second: second.get(id) }, setting) === 'waits'),
  );
}
