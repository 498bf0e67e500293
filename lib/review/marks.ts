import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { isTaken, retryOnConflict } from '@/lib/data/retry';
import { criterionView } from '@/lib/rows/exercise';
import { comparisonOf, measureOf } from '@/lib/rows/spacing';
import {
  afterLateRule,
  effectiveMark,
  type EffectiveMark,
  type GivenLevels,
  type Late,
  type SecondState,
} from '@/shared/marking/marks';
import {
  type MeasuredLine,
  type ProposalBasis,
  type ProposedLevel,
  proposeLevel,
} from '@/shared/marking/propose-level';
import { type Total, totalOf } from '@/shared/marking/total';
import type { Level } from '@/shared/schemas/criterion';
import { giveMarkSchema, type MarkEventView, type MarkView } from '@/shared/schemas/mark';
import { secondMarkingOf } from '@/lib/rows/exercise';
import { claim } from './claim';
import { proofContext } from './context';
import { fixCounted } from './counted';
import { firstSlot, secondSlot, secondState } from './tasks';

/**
 * Sets the level of one criterion, or clears it. Every change is logged with its author and, where a level is changed,
 * the reason. A request based on an older mark changes nothing and gets the present one.
 */
export const giveMark = operation({
  name: 'give-mark',
  allow: 'mark:give',
  input: giveMarkSchema,
  run: async ({ data, now }, { proofId: token, criterionVersionId, level, version, why }): Promise<MarkView> => {
    const context = await proofContext(data, token);
    const { me, proof, course } = context;
    const criterion = (await data.criteria.ofExercise(context.exercise.id))
      .map(criterionView)
      .find(({ versionId }) => versionId === criterionVersionId);
    if (!criterion)
      throw new AppError(
        'CONFLICT',
        'The criteria of this exercise were changed. Reload the page to mark by the present ones; notes are kept.',
      );
    if (level !== null && level >= criterion.levels.length) {
      throw new AppError(
        'INVALID',
        `“${criterion.title}” has ${criterion.levels.length} levels; level ${level + 1} is not among them. Choose one that is shown.`,
      );
    }
    if (context.two === 'done')
      throw new AppError(
        'CONFLICT',
        'Both markers have finished this proof and can see each other’s marks, so these marks can no longer be changed. To change what counts, settle it with a reason on the agreement page.',
      );
    const { taskId } = await claim(data, context, now);
    const given = (await data.marks.ofTasks([taskId])).find((mark) => mark.criterionVersionId === criterionVersionId);
    if ((given?.version ?? -1) !== version) throw changed(criterion, given?.level ?? null);
    if (given && given.level !== null && given.level !== level && why === '') {
      throw new AppError(
        'INVALID',
        `“${criterion.title}” was marked “${criterion.levels[given.level]!.title}”. Say in a few words why it changes; the reason is kept with the mark.`,
        { fields: { why: 'A reason is needed to change a mark.' } },
      );
    }
    const before = given?.level ?? null;
    await retryOnConflict(() => fixCounted(data, context, now));
    const verb = before === null ? 'mark given' : level === null ? 'mark withdrawn' : 'mark changed';
    try {
      await data.transaction(async (inside) => {
        const markId = given ? given.id : await inside.marks.create(taskId, criterionVersionId, level, now);
        if (given && !(await inside.marks.change(given.id, given.version, level, now)))
          throw changed(criterion, before);
        await inside.marks.addEvent({ markId, whoId: me.id, why, before, after: level, at: now });
        // The reason stays with the mark, where erasing a person reaches it; nothing reaches the log.
        await inside.audit.record(
          {
            courseId: course.id,
            verb,
            subject: `mark:${markId}`,
            details: { proof: proof.id, marking: context.slot, criterion: criterion.title, before, after: level },
          },
          now,
        );
      });
    } catch (error) {
      throw isTaken(error) ? changed(criterion, null) : error;
    }
    return { criterionVersionId, level, version: version + 1 };
  },
});

function changed(
  { title, levels }: { title: string; levels: readonly { title: string }[] },
  level: number | null,
): AppError {
  const now = level === null ? 'not marked' : `“${levels[level]!.title}”`;
  return new AppError(
    'CONFLICT',
    `“${title}” was changed meanwhile; when last read it was ${now}. Reload the page to see it as it is now, then mark again.`,
  );
}

type CriterionToMark = {
  versionId: string;
  title: string;
  description: string;
  weight: number;
  levels: Level[];
  mark: MarkView;
  /** What the measures would say, with its arithmetic; a person decides. */
  proposed: ProposedLevel | null;
};
type MarksOfProof = {
  criteria: CriterionToMark[];
  total: Total & { after: number | null; late: string | null; rule: Late | null };
  history: MarkEventView[];
};

type Wanted = { exerciseId: string; proofId: string; taskId: string | null; late: Late | null };

/**
 * All that a marker needs to mark a proof: criteria, what was given so far, what the measures would propose, the total.
 */
export async function marksOfProof(
  data: ScopedData,
  { exerciseId, proofId, taskId, late }: Wanted,
): Promise<MarksOfProof> {
  const [criteriaRows, marks, events, items] = await Promise.all([
    data.criteria.ofExercise(exerciseId),
    taskId === null ? [] : data.marks.ofTasks([taskId]),
    taskId === null ? [] : data.marks.eventsOf(taskId),
    data.critique.measured([proofId]),
  ]);
  const lines: MeasuredLine[] = items.flatMap(({ measurements: [measured], comparisons: [compared] }) =>
    measured ? [{ measure: measureOf(measured), comparison: compared ? comparisonOf(compared) : null }] : [],
  );
  const criteria = criteriaRows.map(criterionView).map(({ versionId, title, description, weight, levels, basis }) => {
    const given = marks.find(({ criterionVersionId }) => criterionVersionId === versionId);
    const mark = { criterionVersionId: versionId, level: given?.level ?? null, version: given?.version ?? -1 };
    return {
      versionId,
      title,
      description,
      weight,
      levels,
      mark,
      proposed: basis === 'judgement' ? null : proposeLevel(basis satisfies ProposalBasis, lines, levels.length),
    };
  });
  return { criteria, total: totalWithLate(criteria, late), history: events.map(eventView) };
}

/** The total of what is marked so far, then what the late rule makes of it. */
export function totalWithLate(
  criteria: readonly { title: string; weight: number; levels: readonly Level[]; mark: { level: number | null } }[],
  late: Late | null,
) {
  const total: Total =
    criteria.length === 0
      ? { percent: null, arithmetic: [] }
      : totalOf(criteria.map(({ mark, ...rest }) => ({ ...rest, level: mark.level })));
  const { percent, sentence } = afterLateRule(total.percent, late);
  return { ...total, after: percent, late: sentence, rule: late };
}

type EventRow = Awaited<ReturnType<ScopedData['marks']['eventsOf']>>[number];

const eventView = ({ mark, who, why, before, after, at }: EventRow): MarkEventView => ({
  criterionVersionId: mark.criterionVersionId,
  who: who?.user?.name ?? null,
  why,
  before,
  after,
  at: at.toISOString(),
});

type MarksOfProofs = {
  /** How far the second marking of a proof is. */
  stateOf(proofId: string): SecondState;
  /** What each marking gave by one criterion. */
  given(proofId: string, criterionVersionId: string): GivenLevels;
  /** The level that counts, and its source. */
  effective(proofId: string, criterionVersionId: string): EffectiveMark;
  /** Whether the first marker has finished, null where marking has not begun. */
  firstDone(proofId: string): boolean | null;
};

const nothing: GivenLevels = { first: null, second: null, settled: null };

/**
 * All marks of these proofs of a round, with the one rule of which level counts. Every page, export and release asks
 * here.
 */
export async function marksOfProofs(
  data: ScopedData,
  round: { secondMarker: string },
  proofIds: readonly string[],
): Promise<MarksOfProofs> {
  const tasks = await data.markTasks.withMarks(proofIds);
  const setting = secondMarkingOf(round);
  const inSlot = (wanted: string) =>
    new Map(tasks.filter(({ slot }) => slot === wanted).map((task) => [task.proofId, task]));
  const [first, second] = [inSlot(firstSlot), inSlot(secondSlot)];
  const levels = new Map<string, GivenLevels>();
  for (const { proofId, slot, marks } of tasks) {
    for (const { criterionVersionId, level } of marks) {
      const key = `${proofId} ${criterionVersionId}`;
      levels.set(key, { ...(levels.get(key) ?? nothing), [slot]: level });
    }
  }
  const stateOf = (proofId: string) =>
    secondState(proofId, { first: first.get(proofId), second: second.get(proofId) }, setting);
  const given = (proofId: string, criterionVersionId: string) =>
    levels.get(`${proofId} ${criterionVersionId}`) ?? nothing;
  return {
    stateOf,
    given,
    effective: (proofId, criterionVersionId) => effectiveMark(given(proofId, criterionVersionId), stateOf(proofId)),
    firstDone: (proofId) => {
      const task = first.get(proofId);
      return task ? task.state === 'done' : null;
    },
  };
}
