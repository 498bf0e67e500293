import * as z from 'zod/mini';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { secondMarkingOf } from '@/lib/marking/second-sample';
import { roundOnly } from '@/shared/schemas/critique';
import { pageNumberSchema, pageOf } from '@/shared/schemas/page';
import { firstSlot } from './mark-tasks';
import { entriesOf, uncountedOf, type QueueEntry } from './queue';
import { queueOrder, type QueueOrder } from './queue-order';
import { roundInHand, type RoundInHand } from './round-in-hand';

/** Proofs on one page of the queue. */
export const proofsPerPage = 50;

/** A page of the queue of a round: what there is to critique, who is at it, and how far the work is. Not a word of who, where names are hidden. */
export const showQueue = operation({
  name: 'show-queue',
  allow: 'critique:write',
  input: z.extend(roundOnly, { page: pageNumberSchema }),
  run: async ({ data, now }, { exerciseId, roundNumber, page: asked }) => {
    const hand = await roundInHand(data, exerciseId, roundNumber);
    const { order, done } = await queueOrder(data, hand, now);
    const { page, pages, from, to } = pageOf(asked, order.counted.length, proofsPerPage);
    const [queue, next, uncounted, specimens] = await Promise.all([
      entriesOf(data, hand, order, order.counted.slice(from, to), now),
      nextOpen(data, hand, order, now),
      page === 1 ? uncountedOf(data, hand, order, order.uncounted.slice(0, proofsPerPage), now) : [],
      data.specimens.ofExercise(exerciseId),
    ]);
    const { round, exercise, course, me } = hand;
    return {
      exercise: { id: exercise.id, title: exercise.title },
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      round: { number: round.number, title: round.title, state: round.state, version: round.version, markingStartedAt: round.markingStartedAt },
      namesHidden: hand.settings.namesHidden,
      mayRelease: me.role === 'instructor',
      secondMarking: secondMarkingOf(round).which,
      specimens: specimens.flatMap(({ id, position, versions }) => versions.map(({ text }) => ({ id, position, text }))),
      /** The proofs of this page, of `count` in all. */
      queue: queue.map(serialised), page, pages, count: order.counted.length,
      /** The first proof that is not marked and that nobody else has in hand. */
      next,
      uncounted, uncountedCount: order.uncounted.length,
      done,
    };
  },
});

const atOnce = 20;

/** The token of the first open proof of the queue that this marker may take. */
async function nextOpen(data: ScopedData, hand: RoundInHand, order: QueueOrder, now: Date): Promise<string | null> {
  for (let after = ''; ;) {
    const open = await data.markTasks.openAfter(hand.round.id, firstSlot, after, hand.me.id, atOnce, now);
    const first = open.map(({ proofId }) => order.placeOf.get(proofId)).find((place) => place !== undefined);
    if (first !== undefined) return (await entriesOf(data, hand, order, [order.counted[first]!], now))[0]!.token;
    if (open.length < atOnce) return null;
    after = open.at(-1)!.alias;
  }
}

/** Where names are hidden, neither the id of the proof nor the section goes out with the alias. */
function serialised({ token, shownAs, section, hidden, state, heldBy, heldUntil, mine, later }: QueueEntry) {
  return { token, shownAs, section: hidden ? null : section, state, heldBy, heldUntil, mine, later };
}
