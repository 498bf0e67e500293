import type { ScopedData } from '@/lib/data';
import { firstSlot, secondSlot, tasksFor, type MarkTaskRow } from '@/lib/critique/mark-tasks';
import { queueOrder, type InOrder } from '@/lib/critique/queue-order';
import type { RoundInHand } from '@/lib/critique/round-in-hand';
import { isSampled, secondMarkingOf } from './second-sample';

/** `free`: may be taken now. `mine`: begun by this marker. `held`: another has it in hand or has finished it. `own`: this marker has a part in the first marking. */
export type SecondStanding = 'free' | 'mine' | 'held' | 'own';
export type SecondPlace = InOrder & { task: MarkTaskRow; standing: SecondStanding };

/**
 * The proofs of a round that a second marker looks at, in the order of the aliases of those tasks, which is fair and has
 * nothing to do with the order of the first marking.
 */
export async function secondQueue(data: ScopedData, hand: Pick<RoundInHand, 'round' | 'course' | 'me'>, now: Date): Promise<SecondPlace[]> {
  const setting = secondMarkingOf(hand.round);
  const [{ order }, begun] = await Promise.all([queueOrder(data, hand, now), data.markTasks.ofRound(hand.round.id, secondSlot)]);
  if (setting.which === 'none' && begun.length === 0) return [];
  const there = new Set(begun.map(({ proofId }) => proofId));
  const places = order.counted.filter(({ proofId }) => isSampled(proofId, setting) || there.has(proofId));
  const proofIds = places.map(({ proofId }) => proofId);
  const [tasks, parts] = await Promise.all([tasksFor(data, hand.round.id, proofIds, now, secondSlot), data.markTasks.partsOf(proofIds, hand.me.id)]);
  const own = new Set(parts.filter(({ slot }) => slot === firstSlot).map(({ proofId }) => proofId));
  return places
    .map((place) => ({ ...place, task: tasks.get(place.proofId)! }))
    // A task that nobody has begun goes away with the setting that asked for it.
    .filter(({ proofId, task }) => isSampled(proofId, setting) || task.markerId !== null)
    .map((place) => ({ ...place, standing: standingOf(place.task, hand.me.id, own.has(place.proofId), now) }))
    .sort((one, other) => (one.task.alias < other.task.alias ? -1 : 1));
}

function standingOf({ markerId, state, leaseUntil }: MarkTaskRow, me: string, ownFirst: boolean, now: Date): SecondStanding {
  if (markerId === me) return 'mine';
  if (markerId !== null && (state === 'done' || (leaseUntil !== null && leaseUntil > now))) return 'held';
  return ownFirst ? 'own' : 'free';
}
