import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { criterionView, type CriterionView } from '@/lib/rows/exercise';
import { type Agreement, agreementOf, agreementWords } from '@/shared/marking/agreement';
import type { EffectiveMark, GivenLevels } from '@/shared/marking/marks';
import { leadsCourse } from '@/shared/schemas/course';
import { roundByNumber } from '@/shared/schemas/critique';
import { secondMarkingOf } from '@/lib/rows/exercise';
import { roundContext, type RoundContext } from './context';
import { marksOfProofs } from './marks';
import { queueOrder } from './order';
import { firstSlot, secondSlot, shownAs, tokenOf } from './tasks';

/**
 * How far two markers agree in a round, by each criterion, and the proofs on which they differ, largest difference
 * first.
 */
export const getAgreement = operation({
  name: 'get-agreement',
  allow: 'mark:settle',
  input: roundByNumber,
  run: async ({ data, now }, { exerciseId, roundNumber }) => {
    const context = await roundContext(data, exerciseId, roundNumber);
    const { round, exercise, course, me } = context;
    const { criteria, proofs, waiting } = await agreementOfRound(data, context, now);
    const differing = proofs.map((proof) => ({ proof, ...differenceOf(proof) })).filter(({ apart }) => apart > 0);
    const [firsts, seconds, people, aliases] = await Promise.all([
      data.markTasks.ofProofs(
        differing.map(({ proof }) => proof.proofId),
        firstSlot,
      ),
      data.markTasks.ofProofs(
        differing.map(({ proof }) => proof.proofId),
        secondSlot,
      ),
      data.markTasks.peopleOf(differing.map(({ proof }) => proof.memberId)),
      data.markTasks.aliasesOf(
        exercise.id,
        differing.map(({ proof }) => proof.memberId),
      ),
    ]);
    const first = new Map(firsts.map((task) => [task.proofId, task]));
    const second = new Map(seconds.map((task) => [task.proofId, task]));
    return {
      course: { id: course.id, title: course.title },
      exercise: { id: exercise.id, title: exercise.title },
      round: { id: round.id, number: round.number, title: round.title },
      setting: secondMarkingOf(round),
      mayPlan: leadsCourse(me.role),
      finished: proofs.length,
      waiting,
      criteria: criteria.map(({ criterion, agreement }) => ({
        versionId: criterion.versionId,
        title: criterion.title,
        levels: criterion.levels.map(({ title }) => title),
        ...agreement,
        reading: agreementWords(agreement),
      })),
      differences: differing
        .map(({ proof, apart, criteriaApart, open }) => {
          const task = first.get(proof.proofId)!;
          const { hidden } = context;
          const other = second.get(proof.proofId);
          return {
            token: tokenOf(task, hidden),
            shownAs: shownAs(
              { name: people.get(proof.memberId)?.name ?? null, alias: aliases.get(proof.memberId) ?? task.alias },
              hidden,
            ),
            markers: [
              task.marker?.user?.name ?? 'a former marker',
              other?.marker?.user?.name ?? 'a former marker',
            ] as const,
            mayOpen: leadsCourse(me.role) || me.id === task.markerId || me.id === other?.markerId,
            apart,
            criteriaApart,
            open,
          };
        })
        .sort((one, other) => other.apart - one.apart || (one.shownAs < other.shownAs ? -1 : 1)),
    };
  },
});

/**
 * `apart`: the sum over the criteria of points of the whole by which the two differ, in percent. `open`: criteria
 * without a settlement.
 */
function differenceOf({ judged }: JudgedProof): { apart: number; criteriaApart: number; open: number } {
  const weights = judged.reduce((sum, { criterion }) => sum + criterion.weight, 0);
  const each = judged.map(({ criterion: { weight, levels }, given: { first, second } }) =>
    first === null || second === null || first === second
      ? 0
      : (Math.abs(levels[first]!.points - levels[second]!.points) * weight) / weights,
  );
  const differ = judged.filter(({ given: { first, second } }) => first !== null && second !== null && first !== second);
  // Levels with the same points still differ: they are listed, at the end.
  return {
    apart: Math.max(
      each.reduce((sum, one) => sum + one, 0),
      differ.length > 0 ? 1e-9 : 0,
    ),
    criteriaApart: differ.length,
    open: judged.filter(({ effective }) => effective.from === 'differs').length,
  };
}

type CriterionAgreement = { criterion: CriterionView; agreement: Agreement };
/** One proof that both have finished, by one criterion after the other in the order of `criteria`. */
type JudgedProof = {
  proofId: string;
  memberId: string;
  judged: { criterion: CriterionView; given: GivenLevels; effective: EffectiveMark }[];
};

/**
 * Every proof of a round that two have finished, with the agreement by each criterion, from the marks as the two gave
 * them.
 */
export async function agreementOfRound(
  data: ScopedData,
  context: RoundContext,
  now: Date,
): Promise<{ criteria: CriterionAgreement[]; proofs: JudgedProof[]; waiting: number }> {
  const [{ order }, rows] = await Promise.all([
    queueOrder(data, context, now),
    data.criteria.ofExercise(context.exercise.id),
  ]);
  const criteria = rows.map(criterionView);
  const marks = await marksOfProofs(
    data,
    context.round,
    order.counted.map(({ proofId }) => proofId),
  );
  const proofs = order.counted
    .filter(({ proofId }) => marks.stateOf(proofId) === 'done')
    .map(({ proofId, memberId }): JudgedProof => ({
      proofId,
      memberId,
      judged: criteria.map((criterion) => ({
        criterion,
        given: marks.given(proofId, criterion.versionId),
        effective: marks.effective(proofId, criterion.versionId),
      })),
    }));
  return {
    criteria: criteria.map((criterion, index) => ({
      criterion,
      agreement: agreementOf(
        proofs.flatMap(({ judged }) => pairOf(judged[index]!.given)),
        criterion.levels.length,
      ),
    })),
    proofs,
    waiting: order.counted.filter(({ proofId }) => marks.stateOf(proofId) === 'waits').length,
  };
}

const pairOf = ({ first, second }: GivenLevels) => (first === null || second === null ? [] : [{ first, second }]);
