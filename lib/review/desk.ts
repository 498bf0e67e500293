import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { leadsCourse } from '@/shared/schemas/course';
import { firstSlot, secondSlot, shownAs, tokenOf } from './tasks';
import { type ProofContext, proofContext } from './context';
import type { ScopedData } from '@/lib/data';
import { lateOf } from '@/lib/work/rounds';
import { marksOfProof } from './marks';
import { secondQueue } from './second-marker';
import { sizeAndGroundOf } from '@/lib/reference/compare';
import { withNamedAuthors } from '@/lib/reference/references';
import { criterionView } from '@/lib/rows/exercise';
import { wrongStartOf } from '@/lib/rows/specimen';
import { comparisonOf, measureOf, spacingOf } from '@/lib/rows/spacing';
import { someBegun } from '@/shared/exercise/rounds';
import { sinceLastRound } from '@/shared/critique/desk';
import { proofLineInput } from '@/shared/schemas/critique';
import { packSchema } from '@/shared/schemas/pack';
import { specimenDetailsSchema } from '@/shared/schemas/specimen';
import { acrossSpecimens, earlierNotes, mapsTo } from './earlier';
import { myQueue, type MyQueue, queueOrder } from './order';
import { noteView } from './notes';
import { listStockNotes } from './stock-notes';

/**
 * One line of one proof, with all that a marker needs there: what was measured and compared (shown on request), notes,
 * earlier notes and what has changed since, marks, and links onwards.
 */
export const getProofLine = operation({
  name: 'get-proof-line',
  allow: 'critique:write',
  input: proofLineInput,
  run: async ({ data, now }, { proof: token, specimenId, section }) => {
    const context = await proofContext(data, token);
    const { proof, round, exercise, course, settings, task, hidden, slot, sight } = context;
    const items = proof.items.toSorted(
      (one, other) => one.specimenVersion.specimen.position - other.specimenVersion.specimen.position,
    );
    const item = items.find(({ specimenVersion }) => specimenVersion.specimenId === specimenId);
    const line = item && (await data.critique.line(item.id));
    if (!item || !line) throw notFound();
    const version = line.specimenVersion;
    const spacing = spacingOf(item);
    const late = lateOf(round, proof.member, proof.receivedAt);
    const comparedWith = line.comparisons[0]?.referenceSetId;
    const earlierItems = await data.critique.earlierItems(proof.memberId, specimenId, exercise.id, round.number);
    const [notes, earlier, previous, references, marks, stock, { order, done }, across] = await Promise.all([
      data.notes.ofItems([item.id]),
      earlierNotes(data, { proofItemIds: earlierItems, specimenId, versionId: version.id }, spacing),
      earlierItems[0] === undefined ? null : data.critique.earlierItem(earlierItems[0]),
      comparedWith ? data.critique.references(comparedWith, version.id) : [],
      marksOfProof(data, {
        exerciseId: exercise.id,
        proofId: proof.id,
        taskId: sight === 'none' ? null : (task?.id ?? null),
        late,
      }),
      listStockNotes(data, course.id, context.me.id),
      queueOrder(data, context, now),
      acrossSpecimens(data, items, item),
    ]);
    const [comparison] = await withNamedAuthors(data, [line.comparisons[0] ? comparisonOf(line.comparisons[0]) : null]);
    const own = { proofId: proof.id, alias: task?.alias ?? 'A student' };
    const here = !task ? token : slot === secondSlot ? task.alias : tokenOf(own, hidden);
    const mine = await myQueue(data, context, order, section);
    const specimenIds = items.map(({ specimenVersion }) => specimenVersion.specimenId);
    const second = slot === secondSlot ? await secondQueue(data, context, now) : null;
    const go = second
      ? neighboursAmong(
          second.map((place) => place.task.alias),
          { token: here, specimenId },
          specimenIds,
        )
      : neighboursOf(context, mine, { token: here, proofId: proof.id, specimenId }, specimenIds);
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      exercise: { id: exercise.id, title: exercise.title },
      sentAgain: await sentAgain(data, context),
      round: { number: round.number, title: round.title, state: round.state, begun: someBegun(round) },
      proof: {
        token: here,
        number: proof.number,
        shownAs: shownAs({ name: proof.member.user?.name ?? null, alias: context.alias }, hidden),
        section: hidden ? null : (proof.member.section?.name ?? null),
        receivedAt: hidden ? null : proof.receivedAt.toISOString(),
        reasoning: proof.reasoning,
        counts: order.placeOf.has(proof.id),
      },
      line: {
        specimenId,
        specimenVersionId: version.id,
        text: version.text,
        place: items.indexOf(item) + 1,
        of: items.length,
        ...sizeAndGroundOf(version),
        remark: z.parse(specimenDetailsSchema, JSON.parse(version.details)).remark,
        tolerance: settings.tolerance,
      },
      personKey: context.me.id,
      released: context.released,
      mayChoose: leadsCourse(context.me.role),
      lines: items.map(({ specimenVersion }) => ({
        specimenId: specimenVersion.specimenId,
        text: specimenVersion.text,
      })),
      pack: z.parse(packSchema, JSON.parse(version.pack.payload)),
      spacing,
      /** What the line began from, where it was wrong on purpose. */
      began: wrongStartOf(version)?.spacing ?? null,
      measure: line.measurements[0] ? measureOf(line.measurements[0]) : null,
      comparison: comparison ?? null,
      /** Hints on how the same text was set at other sizes, weights and in other faces. */
      across,
      references: references.map((reference) => ({
        author: reference.author.user?.name ?? 'A former instructor',
        slot: reference.slot,
        spacing: spacingOf(reference),
      })),
      /** Only of the same version: another's pairs cannot be drawn under this line. */
      previous:
        previous && previous.specimenVersionId === version.id
          ? { round: previous.proof.round.number, proof: previous.proof.number, spacing: spacingOf(previous) }
          : null,
      since: previous && {
        round: previous.proof.round.number,
        moved: sinceLastRound({
          then: spacingOf(previous),
          now: spacing,
          maps: (await mapsTo(data, specimenId, version.id))(previous.specimenVersionId),
          before: previous.comparisons[0] ? comparisonOf(previous.comparisons[0]) : null,
          after: comparison ?? null,
          notes: earlier.filter((note) => note.round === previous.proof.round.number),
        }),
      },
      notes: notes.filter((note) => mayBeRead(note, context)).map((note) => noteView(note, hidden)),
      earlier,
      marks,
      stock,
      task: {
        state: task?.state === 'done' ? ('done' as const) : ('open' as const),
        mine: task?.markerId === context.me.id,
        heldBy:
          task && task.markerId !== context.me.id && task.leaseUntil !== null && task.leaseUntil > now
            ? (task.marker?.user?.name ?? 'another marker')
            : null,
      },
      /** Whether two mark this proof, in which of the two markings this is, and what may be seen of both. */
      two: { state: context.two, slot, sight },
      go,
      queue: {
        ...(second
          ? {
              place: second.findIndex((place) => place.proofId === proof.id) + 1,
              of: second.length,
              done: second.filter((place) => place.task.state === 'done').length,
            }
          : { place: (mine.placeOf.get(proof.id) ?? -1) + 1, of: mine.counted.length, done }),
        skipped: mine.skipped.has(proof.id),
        section: mine.section && { id: mine.section.id, name: mine.section.name },
      },
    };
  },
});

export type CritiqueLine = Awaited<ReturnType<typeof getProofLine>>;

/** Where the keys lead from here: addresses of pages, null at either end. */
type Neighbours = {
  nextStudent: string | null;
  previousStudent: string | null;
  nextLine: string | null;
  previousLine: string | null;
};

type Here = { token: string; proofId: string; specimenId: string };

/**
 * The proofs before and after this one in the queue (the same line), and the lines before and after this one in the
 * proof; after a student's last line follows the first line of the next student. From a proof that does not count, the
 * next is the first of the queue.
 */
function neighboursOf(
  { hidden }: Pick<ProofContext, 'hidden'>,
  queue: MyQueue,
  here: Here,
  specimenIds: readonly string[],
): Neighbours {
  const place = queue.placeOf.get(here.proofId) ?? -1;
  const tokenAt = (at: number) => {
    const one = queue.counted[at];
    return one ? tokenOf(one, hidden) : null;
  };
  return between(tokenAt(place + 1), tokenAt(place - 1), here, specimenIds, queue.section?.id ?? null);
}

/** The same in a queue whose tokens are all known. */
function neighboursAmong(
  tokens: readonly string[],
  here: Omit<Here, 'proofId'>,
  specimenIds: readonly string[],
): Neighbours {
  const place = tokens.indexOf(here.token);
  return between(tokens[place + 1] ?? null, tokens[place - 1] ?? null, here, specimenIds);
}

function between(
  next: string | null,
  previous: string | null,
  here: Omit<Here, 'proofId'>,
  specimenIds: readonly string[],
  section: string | null = null,
): Neighbours {
  const line = specimenIds.indexOf(here.specimenId);
  const nextLine = specimenIds[line + 1];
  const previousLine = line > 0 ? specimenIds[line - 1] : undefined;
  const to = (token: string, specimenId: string) => address(token, specimenId, section);
  return {
    nextStudent: next ? to(next, here.specimenId) : null,
    previousStudent: previous ? to(previous, here.specimenId) : null,
    nextLine: nextLine ? to(here.token, nextLine) : next && specimenIds[0] ? to(next, specimenIds[0]) : null,
    previousLine: previousLine ? to(here.token, previousLine) : null,
  };
}

const address = (token: string, specimenId: string, section: string | null): string =>
  `/critique/${token}/${specimenId}${section === null ? '' : `?section=${section}`}`;

/** An earlier proof of the round on which notes stay or marks were given, before the student sent again. */
type EarlierProof = {
  number: number;
  token: string;
  notes: number;
  /** What the same marking gave there, in words: to be looked at again. */
  marks: { criterionVersionId: string; title: string; level: string }[];
};

/** What was said on a student's earlier proofs of this round. While two mark, each meets their own work alone. */
async function sentAgain(data: ScopedData, context: ProofContext): Promise<EarlierProof[]> {
  const { proof, round, me, sight, slot, hidden, exercise } = context;
  const earlier = (await data.markTasks.proofsOf(round.id, proof.memberId))
    .filter(({ number }) => number < proof.number)
    .toSorted((one, other) => other.number - one.number);
  if (earlier.length === 0) return [];
  const [notes, marked, criteria, tasks] = await Promise.all([
    data.notes.leftOn(round.id, proof.memberId, proof.id),
    data.markTasks.markedIn(round.id, slot, [proof.memberId]),
    data.criteria.ofExercise(exercise.id),
    data.markTasks.ofProofs(
      earlier.map(({ id }) => id),
      firstSlot,
    ),
  ]);
  const views = criteria.map(criterionView);
  return earlier.flatMap(({ id, number }) => {
    const left = notes.filter(
      (note) => note.proofItem.proofId === id && (sight === 'all' || note.authorId === me.id),
    ).length;
    const task = marked.find(({ proofId }) => proofId === id);
    const levels = task && (sight === 'all' || task.markerId === me.id) ? task.marks : [];
    const marks = views.flatMap(({ versionId, title, levels: all }) => {
      const level = levels.find(({ criterionVersionId }) => criterionVersionId === versionId)?.level ?? null;
      return level === null ? [] : [{ criterionVersionId: versionId, title, level: all[level]?.title ?? '' }];
    });
    const own = tasks.find(({ proofId }) => proofId === id);
    const token = own ? tokenOf(own, hidden) : hidden ? null : id;
    return token === null || (left === 0 && marks.length === 0) ? [] : [{ number, token, notes: left, marks }];
  });
}

type Note = { taskId: string | null; authorId: string | null };

/**
 * Whether a marker of the proof may read a note. While two mark it, each reads the notes of their own marking and those
 * they wrote; a note from before any marking belongs to the first.
 */
function mayBeRead(
  note: Note,
  { sight, slot, task, me }: Pick<ProofContext, 'sight' | 'slot' | 'task' | 'me'>,
): boolean {
  if (sight === 'all' || note.authorId === me.id) return true;
  if (sight === 'none') return false;
  return note.taskId === (task?.id ?? null) || (slot === firstSlot && note.taskId === null);
}
