import * as z from 'zod/mini';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { secondMarkingOf } from '@/lib/rows/exercise';
import { grouped } from '@/shared/grouped';
import { leadsCourse } from '@/shared/schemas/course';
import { roundByNumber, sectionSchema } from '@/shared/schemas/critique';
import { pageNumberSchema, pageOf } from '@/shared/schemas/page';
import { firstSlot, shownAs, tasksFor, tokenOf } from './tasks';
import { type InOrder, myQueue, queueOrder, type QueueOrder, sectionsOf } from './order';
import { roundContext, type RoundContext } from './context';

/** Proofs on one page of the queue. */
export const proofsPerPage = 50;

/**
 * A page of the queue of a round: what there is to critique, who is at it, and how far the work is. Not a word of who,
 * where names are hidden.
 */
export const getQueue = operation({
  name: 'get-queue',
  allow: 'critique:write',
  input: z.extend(roundByNumber, { page: pageNumberSchema, section: sectionSchema }),
  run: async ({ data, now }, { exerciseId, roundNumber, page: asked, section: sectionId }) => {
    const context = await roundContext(data, exerciseId, roundNumber);
    const { order, done } = await queueOrder(data, context, now);
    const mine = await myQueue(data, context, order, sectionId);
    const { page, pages, from, to } = pageOf(asked, mine.counted.length, proofsPerPage);
    const [queue, uncounted, specimens, sections, doneInSection] = await Promise.all([
      entriesOf(data, context, order, mine.counted.slice(from, to), now),
      page === 1 ? uncountedOf(data, context, order, order.uncounted.slice(0, proofsPerPage), now) : [],
      data.specimens.ofExercise(exerciseId),
      sectionsOf(data, context),
      mine.section
        ? data.markTasks.doneOf(
            mine.counted.map(({ proofId }) => proofId),
            firstSlot,
          )
        : null,
    ]);
    const { round, exercise, course, me } = context;
    return {
      exercise: { id: exercise.id, title: exercise.title },
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      round: {
        number: round.number,
        title: round.title,
        state: round.state,
        version: round.version,
        markingStartedAt: round.markingStartedAt,
        dueAt: round.dueAt,
        /** Sections with their own dates, each of which begins by itself. */
        sections: round.sections
          .filter(({ opensAt, dueAt }) => opensAt !== null || dueAt !== null)
          .map((own) => ({
            id: own.sectionId,
            name: own.section.name,
            dueAt: own.dueAt ?? round.dueAt,
            markingStartedAt: own.markingStartedAt,
            version: own.version,
          })),
      },
      namesHidden: context.hidden,
      mayRelease: leadsCourse(me.role),
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
function serialised(entry: QueueEntry) {
  const { token, section, hidden, state, heldBy, heldUntil, mine, later, lookAgain } = entry;
  return {
    token,
    shownAs: entry.shownAs,
    section: hidden ? null : section,
    state,
    heldBy,
    heldUntil,
    mine,
    later,
    lookAgain,
  };
}

export type QueueEntry = {
  token: string;
  proofId: string;
  memberId: string;
  shownAs: string;
  section: string | null;
  hidden: boolean;
  state: 'open' | 'done';
  /** Who works on it now, and until when their claim lasts. */
  heldBy: string | null;
  heldUntil: Date | null;
  mine: boolean;
  /** The student sent again: an earlier proof of the round was marked, and this one has not been yet. */
  lookAgain: boolean;
  /** Proofs that arrived after marking began and do not count unless picked. */
  later: LaterProof[];
};

type LaterProof = { token: string; number: number };
/** A student without a counted proof: all arrived after marking began. */
type Uncounted = { shownAs: string; later: LaterProof[] };

/**
 * All of the round's proofs that count, in the order of their aliases: for what goes over all of them, like an export.
 * A page asks `entriesOf`.
 */
export async function queueOf(data: ScopedData, context: RoundContext, now: Date): Promise<QueueEntry[]> {
  const { order } = await queueOrder(data, context, now);
  return entriesOf(data, context, order, order.counted, now);
}

/** The present state of these places of the queue. Reads only them, however long the queue is. */
export async function entriesOf(
  data: ScopedData,
  context: RoundContext,
  order: QueueOrder,
  places: readonly InOrder[],
  now: Date,
): Promise<QueueEntry[]> {
  const { hidden } = context;
  const { tasks, people, aliasOf, laterOf, lookAgain } = await known(
    data,
    context,
    order,
    places.map(({ memberId }) => memberId),
    places.map(({ proofId }) => proofId),
    now,
  );
  return places.map(({ proofId, memberId }) => {
    const task = tasks.get(proofId)!;
    const person = people.get(memberId);
    const held = task.state === 'open' && task.leaseUntil !== null && task.leaseUntil > now;
    return {
      token: tokenOf(task, hidden),
      proofId,
      memberId,
      hidden,
      shownAs: shownAs({ name: person?.name ?? null, alias: aliasOf(memberId, task) }, hidden),
      section: person?.section ?? null,
      state: task.state === 'done' ? 'done' : 'open',
      heldBy: held ? (task.marker?.user?.name ?? null) : null,
      heldUntil: held ? task.leaseUntil : null,
      mine: task.markerId === context.me.id,
      lookAgain: lookAgain(memberId, proofId),
      later: laterOf(memberId),
    };
  });
}

/** These members of whom no proof counts, with what they sent too late. */
async function uncountedOf(
  data: ScopedData,
  context: RoundContext,
  order: QueueOrder,
  memberIds: readonly string[],
  now: Date,
): Promise<Uncounted[]> {
  const { tasks, people, aliasOf, laterOf } = await known(data, context, order, memberIds, [], now);
  return memberIds.map((memberId) => {
    const alias = aliasOf(memberId, tasks.get(order.laterOf.get(memberId)![0]!.id)!);
    return {
      shownAs: shownAs({ name: people.get(memberId)?.name ?? null, alias }, context.hidden),
      later: laterOf(memberId),
    };
  });
}

/** What is asked about a few members of the queue: their tasks, names, and whether the names may be seen. */
async function known(
  data: ScopedData,
  { round, exercise, hidden }: RoundContext,
  order: QueueOrder,
  memberIds: readonly string[],
  proofIds: readonly string[],
  now: Date,
) {
  const late = memberIds.flatMap((id) => order.laterOf.get(id) ?? []).map(({ id }) => id);
  const tasks = await tasksFor(data, round.id, [...proofIds, ...late], now);
  const [people, aliases, marked] = await Promise.all([
    data.markTasks.peopleOf(memberIds),
    hidden ? data.markTasks.aliasesOf(exercise.id, memberIds) : new Map<string, string>(),
    data.markTasks.markedIn(round.id, firstSlot, memberIds),
  ]);
  const markedProofs = grouped(marked, ({ proof }) => proof.memberId);
  const lookAgain = (memberId: string, proofId: string) => {
    const own = markedProofs.get(memberId) ?? [];
    return own.length > 0 && own.every((task) => task.proofId !== proofId);
  };
  const aliasOf = (memberId: string, task: { alias: string }) => aliases.get(memberId) ?? task.alias;
  const laterOf = (memberId: string): LaterProof[] =>
    (order.laterOf.get(memberId) ?? []).map(({ id, number }) => ({
      token: tokenOf(tasks.get(id)!, hidden),
      number,
    }));
  return { tasks, people, aliasOf, laterOf, lookAgain };
}
