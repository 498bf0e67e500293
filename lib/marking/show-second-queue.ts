import * as z from 'zod/mini';
import { operation } from '@/lib/access/operation';
import { roundInHand } from '@/lib/critique/round-in-hand';
import { shownAs } from '@/lib/critique/shown-as';
import { roundOnly } from '@/shared/schemas/critique';
import { pageNumberSchema, pageOf } from '@/shared/schemas/page';
import { secondInTurn, secondQueue, type SecondPlace } from './second-queue';
import { secondMarkingOf } from './second-sample';

const perPage = 50;

/** The proofs of a round that a second marker looks at, and which of them this marker may take. */
export const showSecondQueue = operation({
  name: 'show-second-queue',
  allow: 'critique:write',
  input: z.extend(roundOnly, { page: pageNumberSchema }),
  run: async ({ data, now }, { exerciseId, roundNumber, page: asked }) => {
    const hand = await roundInHand(data, exerciseId, roundNumber);
    const { round, exercise, course, settings, me } = hand;
    const [places, specimens] = await Promise.all([
      secondQueue(data, hand, now),
      data.specimens.ofExercise(exerciseId),
    ]);
    const { page, pages, from, to } = pageOf(asked, places.length, perPage);
    const shown = places.slice(from, to);
    const memberIds = shown.map(({ memberId }) => memberId);
    const [people, released] = await Promise.all([
      data.markTasks.peopleOf(memberIds),
      data.releases.numbersOf(round.id, memberIds),
    ]);
    const row = ({ task, memberId, standing, skipped }: SecondPlace) => ({
      token: task.alias,
      shownAs: shownAs(
        { name: people.get(memberId)?.name ?? null, alias: task.alias },
        settings.namesHidden && !released.has(memberId),
      ),
      standing,
      skipped,
      state: task.state === 'done' ? ('done' as const) : ('open' as const),
      heldBy: standing === 'held' ? (task.marker?.user?.name ?? 'another marker') : null,
    });
    return {
      course: { id: course.id, title: course.title },
      exercise: { id: exercise.id, title: exercise.title },
      round: { id: round.id, number: round.number, title: round.title },
      setting: secondMarkingOf(round),
      mayPlan: me.role === 'instructor',
      firstLine: specimens[0]?.id ?? null,
      rows: shown.map(row),
      page,
      pages,
      count: places.length,
      done: places.filter(({ task }) => task.state === 'done').length,
      /** The first that this marker has begun, else the first that is free, else what they skipped. */
      next: secondInTurn(places)[0]?.task.alias ?? null,
    };
  },
});
