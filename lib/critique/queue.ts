import type { ScopedData } from '@/lib/data';
import { tasksFor } from './mark-tasks';
import { queueOrder, type InOrder, type QueueOrder } from './queue-order';
import type { RoundInHand } from './round-in-hand';
import { shownAs, tokenOf } from './shown-as';

export type QueueEntry = {
  token: string;
  proofId: string;
  memberId: string;
  shownAs: string;
  section: string | null;
  hidden: boolean;
  state: 'open' | 'done';
  /** Who works on it now, and until when it is kept for them. */
  heldBy: string | null;
  heldUntil: Date | null;
  mine: boolean;
  /** Proofs that came after marking began and do not count unless picked. */
  later: LaterProof[];
};

export type LaterProof = { token: string; number: number };
/** Somebody of whom no proof counts: all came after marking began. */
export type Uncounted = { shownAs: string; later: LaterProof[] };

/** All of the round's proofs that count, in the order of their aliases: for what goes over all of them, like an export. A page asks `entriesOf`. */
export async function queueOf(data: ScopedData, hand: RoundInHand, now: Date): Promise<QueueEntry[]> {
  const { order } = await queueOrder(data, hand, now);
  return entriesOf(data, hand, order, order.counted, now);
}

/** These places of the queue as they stand now. Asks only for them, however long the queue is. */
export async function entriesOf(
  data: ScopedData,
  hand: RoundInHand,
  order: QueueOrder,
  places: readonly InOrder[],
  now: Date,
): Promise<QueueEntry[]> {
  const { tasks, people, hiddenOf, laterOf } = await known(
    data,
    hand,
    order,
    places.map(({ memberId }) => memberId),
    places.map(({ proofId }) => proofId),
    now,
  );
  return places.map(({ proofId, memberId }) => {
    const task = tasks.get(proofId)!;
    const person = people.get(memberId);
    const hidden = hiddenOf(memberId);
    const held = task.state === 'open' && task.leaseUntil !== null && task.leaseUntil > now;
    return {
      token: tokenOf(task, hidden),
      proofId,
      memberId,
      hidden,
      shownAs: shownAs({ name: person?.name ?? null, alias: task.alias }, hidden),
      section: person?.section ?? null,
      state: task.state === 'done' ? 'done' : 'open',
      heldBy: held ? (task.marker?.user?.name ?? null) : null,
      heldUntil: held ? task.leaseUntil : null,
      mine: task.markerId === hand.me.id,
      later: laterOf(memberId),
    };
  });
}

/** These members of whom no proof counts, with what they sent too late. */
export async function uncountedOf(
  data: ScopedData,
  hand: RoundInHand,
  order: QueueOrder,
  memberIds: readonly string[],
  now: Date,
): Promise<Uncounted[]> {
  const { tasks, people, hiddenOf, laterOf } = await known(data, hand, order, memberIds, [], now);
  return memberIds.map((memberId) => {
    const alias = tasks.get(order.laterOf.get(memberId)![0]!.id)!.alias;
    return {
      shownAs: shownAs({ name: people.get(memberId)?.name ?? null, alias }, hiddenOf(memberId)),
      later: laterOf(memberId),
    };
  });
}

/** What is asked about a few members of the queue: their tasks, names, and whether the names may be seen. */
async function known(
  data: ScopedData,
  { round, settings }: RoundInHand,
  order: QueueOrder,
  memberIds: readonly string[],
  proofIds: readonly string[],
  now: Date,
) {
  const late = memberIds.flatMap((id) => order.laterOf.get(id) ?? []).map(({ id }) => id);
  const [tasks, people, released] = await Promise.all([
    tasksFor(data, round.id, [...proofIds, ...late], now),
    data.markTasks.peopleOf(memberIds),
    settings.namesHidden ? data.releases.numbersOf(round.id, memberIds) : new Map<string, unknown>(),
  ]);
  const hiddenOf = (memberId: string) => settings.namesHidden && !released.has(memberId);
  const laterOf = (memberId: string): LaterProof[] =>
    (order.laterOf.get(memberId) ?? []).map(({ id, number }) => ({
      token: tokenOf(tasks.get(id)!, hiddenOf(memberId)),
      number,
    }));
  return { tasks, people, hiddenOf, laterOf };
}
