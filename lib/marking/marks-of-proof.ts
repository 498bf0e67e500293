import { criterionView } from '@/lib/exercise/read-exercise';
import { comparisonOf, measureOf } from '@/lib/critique/stored';
import type { ScopedData } from '@/lib/data';
import {
  proposeLevel,
  type MeasuredLine,
  type ProposalBasis,
  type ProposedLevel,
} from '@/shared/marking/propose-level';
import { totalOf, type Total } from '@/shared/marking/total';
import { afterLateRule, type Late } from '@/shared/marking/late-deduction';
import type { Level } from '@/shared/schemas/criterion';
import type { MarkEventView, MarkView } from '@/shared/schemas/mark';

export type CriterionToMark = {
  versionId: string;
  title: string;
  description: string;
  weight: number;
  levels: Level[];
  mark: MarkView;
  /** What the measures would say, with its arithmetic; a person decides. */
  proposed: ProposedLevel | null;
};
export type MarksOfProof = {
  criteria: CriterionToMark[];
  total: Total & { after: number | null; late: string | null; rule: Late | null };
  history: MarkEventView[];
};

type Wanted = { exerciseId: string; proofId: string; taskId: string | null; tolerance: number; late: Late | null };

/** All that a marker needs to mark a proof: criteria, what was given so far, what the measures would propose, the total. */
export async function marksOfProof(
  data: ScopedData,
  { exerciseId, proofId, taskId, tolerance, late }: Wanted,
): Promise<MarksOfProof> {
  const [criteriaRows, marks, events, items] = await Promise.all([
    data.criteria.ofExercise(exerciseId),
    taskId === null ? [] : data.marks.ofTasks([taskId]),
    taskId === null ? [] : data.marks.eventsOf(taskId),
    data.critique.measured([proofId]),
  ]);
  const lines: MeasuredLine[] = items.flatMap(({ measurements: [measured], comparisons: [compared] }) =>
    measured ? [{ measure: measureOf(measured), comparison: compared ? comparisonOf(compared) : null, tolerance }] : [],
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
  const { percent, said } = afterLateRule(total.percent, late);
  return { ...total, after: percent, late: said, rule: late };
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
