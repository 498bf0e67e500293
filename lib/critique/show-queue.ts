import { operation } from '@/lib/access/operation';
import { roundOnly } from '@/shared/schemas/critique';
import { fullQueue, type QueueEntry } from './queue';
import { roundInHand } from './round-in-hand';

/** The queue of a round: what there is to critique, who is at it, and how far the work is. Not a word of who, where names are hidden. */
export const showQueue = operation({
  name: 'show-queue',
  allow: 'critique:write',
  input: roundOnly,
  run: async ({ data, now }, { exerciseId, roundNumber }) => {
    const hand = await roundInHand(data, exerciseId, roundNumber);
    const [{ queue, uncounted }, specimens] = await Promise.all([fullQueue(data, hand, now), data.specimens.ofExercise(exerciseId)]);
    const { round, exercise, course, me } = hand;
    return {
      exercise: { id: exercise.id, title: exercise.title },
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      round: { number: round.number, title: round.title, state: round.state, version: round.version, markingStartedAt: round.markingStartedAt },
      namesHidden: hand.settings.namesHidden,
      mayRelease: me.role === 'instructor',
      specimens: specimens.flatMap(({ id, position, versions }) => versions.map(({ text }) => ({ id, position, text }))),
      queue: queue.map(serialised),
      uncounted,
      done: queue.filter(({ state }) => state === 'done').length,
    };
  },
});

/** Where names are hidden, neither the id of the proof nor the section goes out with the alias. */
function serialised({ token, shownAs, section, hidden, state, heldBy, heldUntil, mine, later }: QueueEntry) {
  return { token, shownAs, section: hidden ? null : section, state, heldBy, heldUntil, mine, later };
}
