import * as z from 'zod/mini';
import { changedMeanwhile, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { leadsCourse } from '@/shared/schemas/course';
import { roundByNumber } from '@/shared/schemas/critique';
import { pageNumberSchema, pageOf } from '@/shared/schemas/page';
import { setSecondMarkingInput } from '@/shared/schemas/mark';
import { isSampled, secondMarkingOf } from '@/lib/rows/exercise';
import { roundContext, type RoundContext } from './context';
import { type InOrder, queueOrder } from './order';
import { firstSlot, type MarkTaskRow, secondSlot, secondState, shownAs, tasksFor } from './tasks';

const perPage = 50;

/** The proofs of a round that a second marker looks at, and which of them this marker may take. */
export const getSecondQueue = operation({
  name: 'get-second-queue',
  allow: 'critique:write',
  input: z.extend(roundByNumber, { page: pageNumberSchema }),
  run: async ({ data, now }, { exerciseId, roundNumber, page: asked }) => {
    const context = await roundContext(data, exerciseId, roundNumber);
    const { round, exercise, course, me } = context;
    const [places, specimens] = await Promise.all([
      secondQueue(data, context, now),
      data.specimens.ofExercise(exerciseId),
    ]);
    const { page, pages, from, to } = pageOf(asked, places.length, perPage);
    const shown = places.slice(from, to);
    const memberIds = shown.map(({ memberId }) => memberId);
    const [people, aliases] = await Promise.all([
      data.markTasks.peopleOf(memberIds),
      data.markTasks.aliasesOf(exercise.id, memberIds),
    ]);
    const row = ({ task, memberId, status, skipped }: SecondPlace) => ({
      token: task.alias,
      shownAs: shownAs(
        { name: people.get(memberId)?.name ?? null, alias: aliases.get(memberId) ?? task.alias },
        context.hidden,
      ),
      status,
      skipped,
      state: task.state === 'done' ? ('done' as const) : ('open' as const),
      heldBy: status === 'held' ? (task.marker?.user?.name ?? 'another marker') : null,
    });
    return {
      course: { id: course.id, title: course.title },
      exercise: { id: exercise.id, title: exercise.title },
      round: { id: round.id, number: round.number, title: round.title },
      setting: secondMarkingOf(round),
      mayPlan: leadsCourse(me.role),
      firstLine: specimens[0]?.id ?? null,
      rows: shown.map(row),
      page,
      pages,
      count: places.length,
      done: places.filter(({ task }) => task.state === 'done').length,
      /** The first that this marker has begun, else the first that is free, else what they skipped. */
      next: orderForMarker(places)[0]?.task.alias ?? null,
    };
  },
});

/**
 * `free`: can be claimed now. `mine`: begun by this marker, and not given back. `held`: another marker has claimed or
 * finished it. `own`: this marker has a part in the first marking.
 */
type SecondClaim = 'free' | 'mine' | 'held' | 'own';
type SecondPlace = InOrder & { task: MarkTaskRow; status: SecondClaim; skipped: boolean };

/**
 * The proofs of a round that get a second marker, ordered by the aliases of those tasks, which is fair and unrelated to
 * the order of the first marking. What this marker skipped is last, for this marker only.
 */
export async function secondQueue(
  data: ScopedData,
  context: Pick<RoundContext, 'round' | 'course' | 'me'>,
  now: Date,
): Promise<SecondPlace[]> {
  const setting = secondMarkingOf(context.round);
  const [{ order }, begun] = await Promise.all([
    queueOrder(data, context, now),
    data.markTasks.ofRound(context.round.id, secondSlot),
  ]);
  if (setting.which === 'none' && begun.length === 0) return [];
  const there = new Set(begun.map(({ proofId }) => proofId));
  const places = order.counted.filter(({ proofId }) => isSampled(proofId, setting) || there.has(proofId));
  const proofIds = places.map(({ proofId }) => proofId);
  const [tasks, parts, skips] = await Promise.all([
    tasksFor(data, context.round.id, proofIds, now, secondSlot),
    data.markTasks.partsOf(proofIds, context.me.id),
    data.markSkips.of(context.round.id, context.me.id),
  ]);
  const skipped = new Map(skips.map(({ proofId }, place) => [proofId, place]));
  const last = (one: InOrder) => skipped.get(one.proofId) ?? -1;
  const own = new Set(parts.filter(({ slot }) => slot === firstSlot).map(({ proofId }) => proofId));
  return (
    places
      .map((place) => ({ ...place, task: tasks.get(place.proofId)! }))
      // An untouched task disappears with the setting that asked for it.
      .filter(({ proofId, task }) => isSampled(proofId, setting) || task.markerId !== null)
      .map((place) => ({
        ...place,
        status: statusOf(place.task, context.me.id, own.has(place.proofId), now),
        skipped: skipped.has(place.proofId),
      }))
      .sort((one, other) => last(one) - last(other) || (one.task.alias < other.task.alias ? -1 : 1))
  );
}

/** Those that this marker can go on with, as they should be given: begun ones, free ones, then what was skipped. */
export function orderForMarker(places: readonly SecondPlace[]): SecondPlace[] {
  const open = places.filter(({ task, status }) => task.state === 'open' && (status === 'mine' || status === 'free'));
  const at = ({ status, skipped }: SecondPlace) => (skipped ? 2 : status === 'mine' ? 0 : 1);
  return open.toSorted((one, other) => at(one) - at(other));
}

function statusOf({ markerId, state, leaseUntil }: MarkTaskRow, me: string, ownFirst: boolean, now: Date): SecondClaim {
  if (markerId === me && (state === 'done' || leaseUntil !== null)) return 'mine';
  if (markerId !== null && (state === 'done' || (leaseUntil !== null && leaseUntil > now))) return 'held';
  return ownFirst ? 'own' : 'free';
}

/** Says which proofs of a round a second marker looks at. What was begun stays, whatever is chosen. */
export const setSecondMarking = operation({
  name: 'set-second-marking',
  allow: 'exercise:plan',
  input: setSecondMarkingInput,
  run: async ({ data, now }, { roundId, version, ...setting }) => {
    const round = await data.rounds.find(roundId);
    if (!round) throw notFound();
    const before = secondMarkingOf(round);
    await data.transaction(async (inside) => {
      if (!(await inside.rounds.setSecondMarker(roundId, version, setting)))
        throw changedMeanwhile(`round ${round.number}`);
      await inside.audit.record(
        {
          courseId: round.exercise.courseId,
          verb: 'second marking set',
          subject: `round:${roundId}`,
          details: { before, after: setting },
        },
        now,
      );
    });
    return { exerciseId: round.exerciseId, roundId };
  },
});

/**
 * Those of these proofs that two are marking without each other: on a page about many, a marker reads only their own
 * notes on them.
 */
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
