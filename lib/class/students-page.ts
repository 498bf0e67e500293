import type { ScopedData } from '@/lib/data';
import type { RoundInHand } from '@/lib/review/context';
import { criterionView } from '@/lib/rows/exercise';
import { marksOfProofs, totalWithLate } from '@/lib/review/marks';
import { lateOf } from '@/lib/work/rounds';
import { countedProof, type EffectiveMark, type Late } from '@/shared/marking/marks';

/** One student in the list of who has sent what. Where names are hidden, marks wait for the release. */
export type StudentRow = {
  memberId: string;
  name: string;
  section: string | null;
  sent: number;
  counts: { number: number; receivedAt: Date; why: 'last' | 'chosen' } | null;
  late: Late | null;
  marked: boolean | null;
  percent: number | null;
  levels: ({ criterionVersionId: string } & EffectiveMark)[];
  released: number | null;
  hidden: boolean;
};

/** A page of the class: who has sent what in the round, and how it was marked. `evenHidden` gives the marks of hidden students, too: then their names must not go out beside them. */
export async function studentsPage(
  data: ScopedData,
  { round, course, settings, exercise }: RoundInHand,
  page: { skip: number; take: number },
  { evenHidden = false } = {},
): Promise<{ rows: StudentRow[]; criteria: ReturnType<typeof criterionView>[] }> {
  const [members, criteriaRows] = await Promise.all([
    data.classSummary.studentsWithProofs(course.id, round.id, page),
    data.criteria.ofExercise(exercise.id),
  ]);
  const criteria = criteriaRows.map(criterionView);
  const counted = members.map((member) => ({
    member,
    ...countedProof(member.proofs, round.markingStartedAt, member.choices[0]?.proofId ?? null),
  }));
  const [releases, marks] = await Promise.all([
    data.releases.numbersOf(
      round.id,
      members.map(({ id }) => id),
    ),
    marksOfProofs(
      data,
      round,
      counted.flatMap(({ proof }) => (proof ? [proof.id] : [])),
    ),
  ]);
  const rows = counted.map(({ member, proof, why }): StudentRow => {
    const released = releases.get(member.id)?.number ?? null;
    const hidden = settings.namesHidden && released === null;
    const late = proof ? lateOf(round, member, proof.receivedAt) : null;
    // While two mark a proof, neither's marks stand on a page that the other may open.
    const two = proof ? marks.stateOf(proof.id) : 'none';
    const begun = proof ? marks.firstDone(proof.id) : null;
    const withheld = (hidden || two === 'waits') && !evenHidden;
    const given = criteria.map((criterion) => ({
      ...criterion,
      mark: proof ? marks.effective(proof.id, criterion.versionId) : { level: null, from: 'first' as const },
    }));
    return {
      memberId: member.id,
      name: member.user?.name ?? `Erased person (${member.id.slice(-6)})`,
      section: member.section?.name ?? null,
      sent: member.proofs.length,
      counts: proof
        ? { number: proof.number, receivedAt: proof.receivedAt, why: why === 'chosen' ? 'chosen' : 'last' }
        : null,
      late,
      marked: (hidden && !evenHidden) || !proof || begun === null ? null : begun && two !== 'waits',
      percent: withheld || !proof ? null : totalWithLate(given, late).after,
      levels: withheld ? [] : given.map(({ versionId, mark }) => ({ criterionVersionId: versionId, ...mark })),
      released,
      hidden,
    };
  });
  return { rows, criteria };
}
