import type { ScopedData } from '@/lib/data';
import { firstSlot, secondSlot, tasksFor, type MarkTaskRow } from '@/lib/critique/mark-tasks';
import { queueOrder, type InOrder } from '@/lib/critique/queue-order';
import type { RoundInHand } from '@/lib/critique/round-in-hand';
import { isSampled, secondMarkingOf } from './second-sample';

/** `free`: may be taken now. `mine`: begun by this marker, and not given back. `held`: another has it in hand or has finished it. `own`: this marker has a part in the first marking. */
export type SecondStanding = 'free' | 'mine' | 'held' | 'own';
export type SecondPlace = InOrder & { task: MarkTaskRow; standing: SecondStanding; skipped: boolean };

/**
 * The proofs of a round that a second marker looks at, in the order of the aliases of those tasks, which is fair and has
 * nothing to do with the order of the first marking. What this marker skipped comes last, for nobody else.
 */
export async function secondQueue(
  data: ScopedData,
  hand: Pick<RoundInHand, 'round' | 'course' | 'me'>,
  now: Date,
): Promise<SecondPlace[]> {
  const setting = secondMarkingOf(hand.round);
  const [{ order }, begun] = await Promise.all([
    queueOrder(data, hand, now),
    data.markTasks.ofRound(hand.round.id, secondSlot),
  ]);
  if (setting.which === 'none' && begun.length === 0) return [];
  const there = new Set(begun.map(({ proofId }) => proofId));
  const places = order.counted.filter(({ proofId }) => isSampled(proofId, setting) || there.has(proofId));
  const proofIds = places.map(({ proofId }) => proofId);
  const [tasks, parts, skips] = await Promise.all([
    tasksFor(data, hand.round.id, proofIds, now, secondSlot),
    data.markTasks.partsOf(proofIds, hand.me.id),
    data.markSkips.of(hand.round.id, hand.me.id),
  ]);
  const skipped = new Map(skips.map(({ proofId }, place) => [proofId, place]));
  const last = (one: InOrder) => skipped.get(one.proofId) ?? -1;
  const own = new Set(parts.filter(({ slot }) => slot === firstSlot).map(({ proofId }) => proofId));
  return (
    places
      .map((place) => ({ ...place, task: tasks.get(place.proofId)! }))
      // A task that nobody has begun goes away with the setting that asked for it.
      .filter(({ proofId, task }) => isSampled(proofId, setting) || task.markerId !== null)
      .map((place) => ({
        ...place,
        standing: standingOf(place.task, hand.me.id, own.has(place.proofId), now),
        skipped: skipped.has(place.proofId),
      }))
      .sort((one, other) => last(one) - last(other) || (one.task.alias < other.task.alias ? -1 : 1))
  );
}

/** Those that this marker can go on with, as they should be given: begun ones, free ones, then what was skipped. */
export function secondInTurn(places: readonly SecondPlace[]): SecondPlace[] {
  const open = places.filter(
    ({ task, standing }) => task.state === 'open' && (standing === 'mine' || standing === 'free'),
  );
  const at = ({ standing, skipped }: SecondPlace) => (skipped ? 2 : standing === 'mine' ? 0 : 1);
  return open.toSorted((one, other) => at(one) - at(other));
}

function standingOf(
  { markerId, state, leaseUntil }: MarkTaskRow,
  me: string,
  ownFirst: boolean,
  now: Date,
): SecondStanding {
  if (markerId === me && (state === 'done' || leaseUntil !== null)) return 'mine';
  if (markerId !== null && (state === 'done' || (leaseUntil !== null && leaseUntil > now))) return 'held';
  return ownFirst ? 'own' : 'free';
}
