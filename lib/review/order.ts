import { notFound } from '@/lib/access/errors';
import type { ScopedData } from '@/lib/data';
import { type CountedOfMember, countedProofs } from './counted';
import { firstSlot, tasksFor } from './tasks';
import type { RoundContext } from './context';

export type InOrder = { proofId: string; memberId: string; alias: string };
type Later = { id: string; number: number };

/** The queue of a round without anything that changes while it is worked through: see `queueOrder`. */
export type QueueOrder = {
  /** The proofs that count, in the order of their aliases: fair, and the same for every marker. */
  counted: readonly InOrder[];
  /** Its place among them, from 0; by its id and by its alias. */
  placeOf: ReadonlyMap<string, number>;
  /** By member: proofs that arrived after marking began and do not count unless picked. */
  laterOf: ReadonlyMap<string, readonly Later[]>;
  /** Members without a counted proof: all arrived after marking began. */
  uncounted: readonly string[];
  /** First tasks of proofs that do not count (any more). */
  tasksAside: readonly string[];
};

const cache = new Map<string, { state: string; order: QueueOrder }>();
const mostCached = 40;

/**
 * The order of a round's queue and how many of its proofs are marked. Computed once for each state of the round, which
 * is a handful of counts read from the database each time, and cached: so a look at one page or one proof costs the
 * same among 30 and among 3,000. The same query has shown that the reader is staff of the round.
 */
export async function queueOrder(
  data: ScopedData,
  context: Pick<RoundContext, 'round' | 'course'>,
  now: Date,
): Promise<{ order: QueueOrder; done: number; students: number }> {
  const { round, course } = context;
  const state = await data.roundState.of(round, course.id);
  if (state === null) throw notFound();
  const known = cache.get(round.id);
  const order = known?.state === state.queue ? known.order : await workOut(data, context, now);
  const doneAside = order.tasksAside.length === 0 ? 0 : (await data.markTasks.doneAmong(order.tasksAside)).length;
  return { order, done: state.done - doneAside, students: state.students };
}

/**
 * Orders the proofs, after making the first tasks that are still missing. The state is read before the proofs, so that
 * a proof arriving in between is found at the next look and never missed.
 */
async function workOut(
  data: ScopedData,
  { round, course }: Pick<RoundContext, 'round' | 'course'>,
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
  cache.delete(roundId);
  cache.set(roundId, { state, order });
  if (cache.size > mostCached) cache.delete(cache.keys().next().value!);
  return order;
}

type SectionOfQueue = { id: string; name: string; sent: number };

/** The queue as one marker goes through it. */
export type MyQueue = Pick<QueueOrder, 'counted' | 'placeOf'> & {
  /** Proofs that this marker has put off: last, for this marker only. */
  skipped: ReadonlySet<string>;
  section: SectionOfQueue | null;
};

type QueueContext = Pick<RoundContext, 'round' | 'course' | 'hidden' | 'me'>;

/**
 * The round's order, or the part of it that a section has sent, with what this marker skipped at the end.
 * @throws NOT_FOUND for a section that may not be told apart.
 */
export async function myQueue(
  data: ScopedData,
  context: QueueContext,
  order: QueueOrder,
  sectionId: string | null,
): Promise<MyQueue> {
  const [skips, part] = await Promise.all([
    data.markSkips.of(context.round.id, context.me.id),
    sectionId === null ? null : sectionPart(data, context, sectionId),
  ]);
  if (skips.length === 0 && part === null) return { ...order, skipped: new Set(), section: null };
  const ofPart = part === null ? order.counted : order.counted.filter(({ memberId }) => part.members.has(memberId));
  const skipped = new Map(skips.map(({ proofId }, place) => [proofId, place]));
  const last = (one: InOrder) => skipped.get(one.proofId) ?? -1;
  const counted = ofPart.toSorted((one, other) => last(one) - last(other));
  return {
    counted,
    skipped: new Set(skipped.keys()),
    section: part?.section ?? null,
    placeOf: new Map(
      counted.flatMap(({ proofId, alias }, place) => [
        [proofId, place],
        [alias, place],
      ]),
    ),
  };
}

async function sectionPart(
  data: ScopedData,
  context: QueueContext,
  sectionId: string,
): Promise<{ section: SectionOfQueue; members: ReadonlySet<string> }> {
  const section = (await sectionsOf(data, context)).find(({ id }) => id === sectionId);
  if (!section) throw notFound();
  return { section, members: new Set(await data.sections.memberIds(context.course.id, sectionId)) };
}

/** Where names are hidden, a part of the queue with fewer in it would say too much of who they are. */
const fewestHidden = 5;

/**
 * The sections by which the queue can be gone through; none where names are hidden and one of the parts is very small.
 */
export async function sectionsOf(data: ScopedData, { round, course, hidden }: QueueContext): Promise<SectionOfQueue[]> {
  const parts = await data.sections.sentIn(course.id, round.id);
  if (hidden && parts.some(({ sent }) => sent < fewestHidden)) return [];
  const named = parts.flatMap(({ id, name, sent }) => (id === null || name === null ? [] : [{ id, name, sent }]));
  return parts.length > 1 ? named.toSorted((one, other) => (one.name < other.name ? -1 : 1)) : [];
}
