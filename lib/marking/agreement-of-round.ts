import type { ScopedData } from '@/lib/data';
import { queueOrder } from '@/lib/critique/queue-order';
import type { RoundInHand } from '@/lib/critique/round-in-hand';
import { criterionView, type CriterionView } from '@/lib/exercise/read-exercise';
import { agreementOf, type Agreement } from '@/shared/marking/agreement';
import type { EffectiveMark, GivenLevels } from '@/shared/marking/effective-mark';
import { marksOfProofs } from './effective-marks';

export type CriterionAgreement = { criterion: CriterionView; agreement: Agreement };
/** One proof that both have finished, by one criterion after the other in the order of `criteria`. */
export type JudgedProof = {
  proofId: string;
  memberId: string;
  judged: { criterion: CriterionView; given: GivenLevels; effective: EffectiveMark }[];
};

/** Every proof of a round that two have finished, with the agreement by each criterion, from the marks as the two gave them. */
export async function agreementOfRound(
  data: ScopedData,
  hand: RoundInHand,
  now: Date,
): Promise<{ criteria: CriterionAgreement[]; proofs: JudgedProof[]; waiting: number }> {
  const [{ order }, rows] = await Promise.all([
    queueOrder(data, hand, now),
    data.criteria.ofExercise(hand.exercise.id),
  ]);
  const criteria = rows.map(criterionView);
  const marks = await marksOfProofs(
    data,
    hand.round,
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
