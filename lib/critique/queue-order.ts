import { notFound } from '@/lib/access/errors';
import type { ScopedData } from '@/lib/data';
import { countedProofs, type CountedOfMember } from './counted-proofs';
import { firstSlot, tasksFor } from './mark-tasks';
import type { RoundInHand } from './round-in-hand';

export type InOrder = { proofId: string; memberId: string; alias: string };
type Later = { id: string; number: number };

/** The queue of a round without anything that changes while it is worked through: see `queueOrder`. */
export type QueueOrder = {
  /** The proofs that count, in the order of their aliases: fair, and the same for every marker. */
  counted: readonly InOrder[];
  /** Where a proof stands among them, from 0; by its id and by its alias. */
  placeOf: ReadonlyMap<string, number>;
  /** By member: proofs that came after marking began and do not count unless picked. */
  laterOf: ReadonlyMap<string, readonly Later[]>;
  /** Members of whom no proof counts: all came after marking began. */
  uncounted: readonly string[];
  /** First tasks of proofs that do not count (any more). */
  tasksAside: readonly string[];
};

const kept = new Map<string, { state: string; order: QueueOrder }>();
const mostKept = 40;

/**
 * The order of a round's queue and how many of its proofs are marked. Worked out once for each state of the round, which is
 * a handful of counts asked of the database each time, and kept in memory: so a look at one page or one proof costs the
 * same among 30 and among 3,000. Whoever reads what is kept has been found to be staff of the round by that same question.
 */
export async function queueOrder(
  data: ScopedData,
  hand: Pick<RoundInHand, 'round' | 'course'>,
  now: Date,
): Promise<{ order: QueueOrder; done: number; students: number }> {
  const { round, course } = hand;
  const state = await data.roundState.of(round, course.id);
  if (state === null) throw notFound();
  const known = kept.get(round.id);
  const order = known?.state === state.queue ? known.order : await workOut(data, hand, now);
  const doneAside = order.tasksAside.length === 0 ? 0 : (await data.markTasks.doneAmong(order.tasksAside)).length;
  return { order, done: state.done - doneAside, students: state.students };
}

/**
 * Puts the proofs in order, after making the first tasks that are still missing. The state is read before what it stands
 * for, so that what comes in between is found at the next look and never missed.
 */
async function workOut(
  data: ScopedData,
  { round, course }: Pick<RoundInHand, 'round' | 'course'>,
  now: Date,
): Promise<QueueOrder> {
  for (;;) {
    const state = await data.roundState.of(round, course.id);
    const [counted, rows] = await Promise.all([
      countedProofs(data, round),
      data.markTasks.ofRound(round.id, firstSlot),
    ]);
    const tasks = new Map(rows.map((task) => [task.proofId, task]));
    const missing = counted
      .flatMap(({ proof, tooLate }) => [...(proof ? [proof.id] : []), ...tooLate.map(({ id }) => id)])
      .filter((id) => !tasks.has(id));
    if (state && missing.length === 0) return keep(round.id, state.queue, orderOf(counted, tasks));
    await tasksFor(data, round.id, [...new Set(missing)], now);
  }
}

function orderOf(
  counted: readonly CountedOfMember[],
  tasks: ReadonlyMap<string, { id: string; alias: string; proofId: string }>,
): QueueOrder {
  const inOrder = counted
    .flatMap(({ memberId, proof }) =>
      proof ? [{ proofId: proof.id, memberId, alias: tasks.get(proof.id)!.alias }] : [],
    )
    .sort((one, other) => (one.alias < other.alias ? -1 : 1));
  const counting = new Set(inOrder.map(({ proofId }) => proofId));
  const late = counted.filter(({ tooLate }) => tooLate.length > 0);
  return {
    counted: inOrder,
    placeOf: new Map(
      inOrder.flatMap(({ proofId, alias }, place) => [
        [proofId, place],
        [alias, place],
      ]),
    ),
    laterOf: new Map(
      late.map(({ memberId, proof, tooLate }) => [memberId, tooLate.filter(({ id }) => id !== proof?.id)]),
    ),
    uncounted: late.filter(({ proof }) => proof === null).map(({ memberId }) => memberId),
    tasksAside: [...tasks.values()].filter(({ proofId }) => !counting.has(proofId)).map(({ id }) => id),
  };
}

function keep(roundId: string, state: string, order: QueueOrder): QueueOrder {
  kept.delete(roundId);
  kept.set(roundId, { state, order });
  if (kept.size > mostKept) kept.delete(kept.keys().next().value!);
  return order;
}
