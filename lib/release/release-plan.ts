import { createHash } from 'node:crypto';
import type { ScopedData } from '@/lib/data';
import type { RoundInHand } from '@/lib/review/context';
import { criterionView, type CriterionView } from '@/lib/rows/exercise';
import { marksOfProofs, totalWithLate } from '@/lib/review/marks';
import { lateOf } from '@/lib/work/rounds';
import type { EffectiveMark, Late } from '@/shared/marking/marks';
import { canonicalJson } from '@/shared/text/canonical-json';
import { grouped } from '@/shared/grouped';

/** What would go out to one student, in outline; `seen` stands for all of it and changes whenever any of it does. */
export type PlannedRelease = {
  proofId: string;
  memberId: string;
  seen: string;
  notes: number;
  unmarked: number;
  percent: number | null;
  late: Late | null;
  marks: ({ criterionVersionId: string } & EffectiveMark)[];
};

/**
 * Outlines what would go out for these proofs. Reads versions and not words, so that it stays cheap for a whole class:
 * a snapshot is a function of exactly what is stamped here.
 */
export async function releasePlan(
  data: ScopedData,
  { round, settings, exercise }: RoundInHand,
  queue: readonly { proofId: string }[],
): Promise<{ criteria: CriterionView[]; plan: PlannedRelease[] }> {
  const proofIds = queue.map(({ proofId }) => proofId);
  const [criteriaRows, marks, proofs, notes, lines] = await Promise.all([
    data.criteria.ofExercise(exercise.id),
    marksOfProofs(data, round, proofIds),
    data.critique.proofsWithMembers(round.id, proofIds),
    data.notes.stampsOf(proofIds),
    data.critique.comparedWith(proofIds),
  ]);
  const criteria = criteriaRows.map(criterionView);
  const notesOf = grouped(notes, ({ proofItem }) => proofItem.proofId);
  const linesOf = grouped(lines, ({ proofId }) => proofId);
  const plan = proofs.map(({ id, memberId, member, receivedAt }) => {
    const own = notesOf.get(id) ?? [];
    const late = lateOf(round, member, receivedAt);
    const marked = criteria.map((criterion) => ({ ...criterion, mark: marks.effective(id, criterion.versionId) }));
    const stamp = {
      proof: id,
      late,
      references: settings.referencesShown,
      marks: marked.map(({ versionId, mark }) => [versionId, mark.level, mark.from]),
      notes: own.map((note) => [note.id, note.version, note._count.entries]),
      lines: (linesOf.get(id) ?? []).map((line) => [line.id, line.comparisons[0]?.id ?? null]),
    };
    return {
      proofId: id,
      memberId,
      late,
      notes: own.length,
      seen: createHash('sha256').update(canonicalJson(stamp)).digest('hex'),
      unmarked: marked.filter(({ mark }) => mark.level === null).length,
      percent: totalWithLate(marked, late).after,
      marks: marked.map(({ versionId, mark }) => ({ criterionVersionId: versionId, ...mark })),
    };
  });
  return { criteria, plan };
}
