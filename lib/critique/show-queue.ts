import * as z from 'zod/mini';
import { operation } from '@/lib/access/operation';
import { secondMarkingOf } from '@/lib/marking/second-sample';
import { roundOnly, sectionSchema } from '@/shared/schemas/critique';
import { pageNumberSchema, pageOf } from '@/shared/schemas/page';
import { firstSlot } from './mark-tasks';
import { myQueue, sectionsOf } from './my-queue';
import { entriesOf, uncountedOf, type QueueEntry } from './queue';
import { queueOrder } from './queue-order';
import { roundInHand } from './round-in-hand';

/** Proofs on one page of the queue. */
export const proofsPerPage = 50;

/** A page of the queue of a round: what there is to critique, who is at it, and how far the work is. Not a word of who, where names are hidden. */
export const showQueue = operation({
  name: 'show-queue',
  allow: 'critique:write',
  input: z.extend(roundOnly, { page: pageNumberSchema, section: sectionSchema }),
  run: async ({ data, now }, { exerciseId, roundNumber, page: asked, section: sectionId }) => {
    const hand = await roundInHand(data, exerciseId, roundNumber);
    const { order, done } = await queueOrder(data, hand, now);
    const mine = await myQueue(data, hand, order, sectionId);
    const { page, pages, from, to } = pageOf(asked, mine.counted.length, proofsPerPage);
    const [queue, uncounted, specimens, sections, doneInSection] = await Promise.all([
      entriesOf(data, hand, order, mine.counted.slice(from, to), now),
      page === 1 ? uncountedOf(data, hand, order, order.uncounted.slice(0, proofsPerPage), now) : [],
      data.specimens.ofExercise(exerciseId),
      sectionsOf(data, hand),
      mine.section
        ? data.markTasks.doneOf(
            mine.counted.map(({ proofId }) => proofId),
            firstSlot,
          )
        : null,
    ]);
    const { round, exercise, course, me } = hand;
    return {
      exercise: { id: exercise.id, title: exercise.title },
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      round: {
        number: round.number,
        title: round.title,
        state: round.state,
        version: round.version,
        markingStartedAt: round.markingStartedAt,
      },
      namesHidden: hand.settings.namesHidden,
      mayRelease: me.role === 'instructor',
      secondMarking: secondMarkingOf(round).which,
      specimens: specimens.flatMap(({ id, position, versions }) =>
        versions.map(({ text }) => ({ id, position, text })),
      ),
      /** The proofs of this page, of `count` in all. */
      queue: queue.map((entry) => ({ ...serialised(entry), skipped: mine.skipped.has(entry.proofId) })),
      page,
      pages,
      count: mine.counted.length,
      sections,
      section: mine.section,
      uncounted,
      uncountedCount: order.uncounted.length,
      done: doneInSection ?? done,
    };
  },
});

/** Where names are hidden, neither the id of the proof nor the section goes out with the alias. */
function serialised({ token, shownAs, section, hidden, state, heldBy, heldUntil, mine, later }: QueueEntry) {
  return { token, shownAs, section: hidden ? null : section, state, heldBy, heldUntil, mine, later };
}
