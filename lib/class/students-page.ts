import type { ScopedData } from '@/lib/data';
import { firstSlot } from '@/lib/critique/mark-tasks';
import type { RoundInHand } from '@/lib/critique/round-in-hand';
import { criterionView } from '@/lib/exercise/read-exercise';
import { lateOf } from '@/lib/marking/late';
import { totalWithLate } from '@/lib/marking/marks-of-proof';
import { countedProof } from '@/shared/proof/counted-proof';
import type { Late } from '@/shared/marking/late-deduction';

/** One student in the list of who has sent what. Where names are hidden, marks wait for the release. */
export type StudentRow = {
  memberId: string; name: string; section: string | null;
  sent: number; counts: { number: number; receivedAt: Date; why: 'last' | 'chosen' } | null;
  late: Late | null;
  marked: boolean | null; percent: number | null;
  levels: { criterionVersionId: string; level: number | null }[];
  released: number | null; hidden: boolean;
};

/** A page of the class: who has sent what in the round, and how it was marked. `evenHidden` gives the marks of hidden students, too: then their names must not go out beside them. */
export async function studentsPage(data: ScopedData, { round, course, settings, exercise }: RoundInHand, page: { skip: number; take: number }, { evenHidden = false } = {}): Promise<{ rows: StudentRow[]; criteria: ReturnType<typeof criterionView>[] }> {
  const [members, criteriaRows] = await Promise.all([data.classSummary.studentsWithProofs(course.id, round.id, page), data.criteria.ofExercise(exercise.id)]);
  const criteria = criteriaRows.map(criterionView);
  const counted = members.map((member) => ({ member, ...countedProof(member.proofs, round.markingStartedAt, member.choices[0]?.proofId ?? null) }));
  const [releases, tasks] = await Promise.all([
    data.releases.numbersOf(round.id, members.map(({ id }) => id)),
    data.markTasks.ofProofs(counted.flatMap(({ proof }) => (proof ? [proof.id] : [])), firstSlot),
  ]);
  const taskOf = new Map(tasks.map((task) => [task.proofId, task]));
  const begun = counted.flatMap(({ proof }) => taskOf.get(proof?.id ?? '')?.id ?? []);
  const marks = begun.length > 0 ? await data.marks.ofTasks(begun) : [];
  const rows = counted.map(({ member, proof, why }): StudentRow => {
    const task = proof ? taskOf.get(proof.id) : undefined;
    const released = releases.get(member.id)?.number ?? null;
    const hidden = settings.namesHidden && released === null;
    const late = proof ? lateOf(round, member, proof.receivedAt) : null;
    const given = criteria.map((criterion) => ({ ...criterion, mark: { level: marks.find(({ taskId, criterionVersionId }) => taskId === task?.id && criterionVersionId === criterion.versionId)?.level ?? null } }));
    return {
      memberId: member.id,
      name: member.user?.name ?? `Erased person (${member.id.slice(-6)})`,
      section: member.section?.name ?? null,
      sent: member.proofs.length,
      counts: proof ? { number: proof.number, receivedAt: proof.receivedAt, why: why === 'chosen' ? 'chosen' : 'last' } : null,
      late,
      marked: (hidden && !evenHidden) || !task ? null : task.state === 'done',
      percent: (hidden && !evenHidden) || !proof ? null : totalWithLate(given, late).after,
      levels: hidden && !evenHidden ? [] : given.map(({ versionId, mark }) => ({ criterionVersionId: versionId, level: mark.level })),
      released, hidden,
    };
  });
  return { rows, criteria };
}
