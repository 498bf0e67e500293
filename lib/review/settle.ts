import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { isTaken } from '@/lib/data/retry';
import { criterionView, type CriterionView } from '@/lib/rows/exercise';
import { levelsOf } from '@/lib/rows/spacing';
import { leadsCourse } from '@/shared/schemas/course';
import { proofOnly } from '@/shared/schemas/critique';
import { settleMarkSchema } from '@/shared/schemas/mark';
import { proofContext, type ProofContext } from './context';
import { marksOfProofs } from './marks';
import { settledSlot, shownAs, tasksFor, tokenOf } from './tasks';

/**
 * One proof as two markers judged it: both levels by each criterion, the one that counts, and every change of every
 * mark with its author and reason.
 */
export const getMarkDifference = operation({
  name: 'get-mark-difference',
  allow: 'mark:settle',
  input: proofOnly,
  run: async ({ data }, { proof: token }) => {
    const context = await proofContext(data, token);
    const { proof, round, exercise, course, first, second, hidden } = context;
    // Until both have finished there is nothing to compare.
    if (context.two !== 'done') throw notFound();
    const [rows, marks, settled, history] = await Promise.all([
      data.criteria.ofExercise(exercise.id),
      marksOfProofs(data, round, [proof.id]),
      data.markTasks.byProof(proof.id, settledSlot).then((task) => (task ? data.marks.ofTasks([task.id]) : [])),
      data.marks.historyOf(proof.id),
    ]);
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      exercise: { id: exercise.id, title: exercise.title },
      round: { number: round.number, title: round.title },
      proof: {
        token: tokenOf({ proofId: proof.id, alias: first!.alias }, hidden),
        shownAs: shownAs({ name: proof.member.user?.name ?? null, alias: context.alias }, hidden),
        specimenId: firstLine(proof.items),
      },
      markers: {
        first: first!.marker?.user?.name ?? 'a former marker',
        second: second!.marker?.user?.name ?? 'a former marker',
      },
      maySettle: maySettle(context),
      released: context.released,
      criteria: rows.map(criterionView).map(({ versionId, title, description, weight, levels }) => ({
        versionId,
        title,
        description,
        weight,
        levels: levels.map((level) => ({ title: level.title, points: level.points })),
        ...marks.given(proof.id, versionId),
        effective: marks.effective(proof.id, versionId),
        version: settled.find(({ criterionVersionId }) => criterionVersionId === versionId)?.version ?? -1,
      })),
      history: history.map(eventView),
    };
  },
});

type EventRow = Awaited<ReturnType<ScopedData['marks']['historyOf']>>[number];

function eventView({ mark, who, why, before, after, at }: EventRow) {
  const levels = levelsOf(mark.criterionVersion);
  const named = (level: number | null) => (level === null ? null : (levels[level]?.title ?? `level ${level + 1}`));
  return {
    slot: mark.task.slot,
    criterion: mark.criterionVersion.title,
    who: who?.user?.name ?? null,
    why,
    before: named(before),
    after: named(after),
    at: at.toISOString(),
  };
}

type Items = Awaited<ReturnType<typeof proofContext>>['proof']['items'];
const firstLine = (items: Items): string | null =>
  items.toSorted((one, other) => one.specimenVersion.specimen.position - other.specimenVersion.specimen.position)[0]
    ?.specimenVersion.specimenId ?? null;

/**
 * Settles the level that counts for one criterion once both markers have finished, with a reason and the name of the
 * person who settles it. The two markers' own marks stay as they are. A request based on an older state changes
 * nothing.
 */
export const settleMark = operation({
  name: 'settle-mark',
  allow: 'mark:settle',
  input: settleMarkSchema,
  run: async ({ data, now }, { proof: token, criterionVersionId, level, version, why }) => {
    const context = await proofContext(data, token);
    const { proof, round, exercise, course, me } = context;
    refuseUnlessReady(context);
    const criterion = (await data.criteria.ofExercise(exercise.id))
      .map(criterionView)
      .find(({ versionId }) => versionId === criterionVersionId);
    if (!criterion)
      throw new AppError(
        'CONFLICT',
        'The criteria of this exercise were changed. The page shows the present ones; settle by those.',
      );
    if (level !== null && level >= criterion.levels.length) {
      throw new AppError(
        'INVALID',
        `“${criterion.title}” has ${criterion.levels.length} levels; level ${level + 1} is not among them. Choose one that is shown.`,
      );
    }
    const task = (await tasksFor(data, round.id, [proof.id], now, settledSlot)).get(proof.id)!;
    const given = (await data.marks.ofTasks([task.id])).find((mark) => mark.criterionVersionId === criterionVersionId);
    const before = given?.level ?? null;
    if ((given?.version ?? -1) !== version) throw changed(criterion, before);
    const verb =
      level === null ? 'settled level withdrawn' : before === null ? 'difference settled' : 'settled level changed';
    try {
      await data.transaction(async (inside) => {
        const markId = given ? given.id : await inside.marks.create(task.id, criterionVersionId, level, now);
        if (given && !(await inside.marks.change(given.id, given.version, level, now)))
          throw changed(criterion, before);
        await inside.markTasks.settledBy(task.id, me.id, now);
        await inside.marks.addEvent({ markId, whoId: me.id, why, before, after: level, at: now });
        // The reason stays with the mark, where erasing a person reaches it; nothing reaches the log.
        await inside.audit.record(
          {
            courseId: course.id,
            verb,
            subject: `mark:${markId}`,
            details: { proof: proof.id, marking: settledSlot, criterion: criterion.title, before, after: level },
          },
          now,
        );
      });
    } catch (error) {
      throw isTaken(error) ? changed(criterion, null) : error;
    }
    return {
      exerciseId: exercise.id,
      roundNumber: round.number,
      token: tokenOf({ proofId: proof.id, alias: context.first?.alias ?? token }, context.hidden),
    };
  },
});

/** An instructor may settle, and each of the two who marked the proof. */
const maySettle = ({ me, first, second }: Pick<ProofContext, 'me' | 'first' | 'second'>): boolean =>
  leadsCourse(me.role) || me.id === first?.markerId || me.id === second?.markerId;

function refuseUnlessReady(context: ProofContext): void {
  if (context.two === 'none')
    throw new AppError('CONFLICT', 'One person marks this proof, so there is nothing to settle.');
  if (context.two === 'waits')
    throw new AppError(
      'CONFLICT',
      'Both markers have to finish this proof before anything is settled; until then neither sees the other’s marks.',
    );
  if (!maySettle(context))
    throw new AppError('CONFLICT', 'The instructor settles differences, or one of the two who marked this proof.');
}

function changed({ title, levels }: CriterionView, level: number | null): AppError {
  const now = level === null ? 'not settled' : `“${levels[level]!.title}”`;
  return new AppError(
    'CONFLICT',
    `“${title}” was settled meanwhile; when last read it was ${now}. The page shows it as it is now; look and settle again.`,
  );
}
