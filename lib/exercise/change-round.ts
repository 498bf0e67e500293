import { AppError, changedMeanwhile, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { changeRoundInput } from '@/shared/schemas/exercise';
import { typedRound } from './typed-round';

/** Name, dates and late rule of a round that has not been released. */
export const changeRound = operation({
  name: 'change-round',
  allow: 'exercise:plan',
  input: changeRoundInput,
  run: async ({ data }, { roundId, version, ...typed }) => {
    const round = await data.rounds.find(roundId);
    if (!round) throw notFound();
    if (round.state === 'released')
      throw new AppError(
        'CONFLICT',
        `Round ${round.number} has been released, so its dates are fixed. Add another round for more work.`,
      );
    const { fields, remarks } = typedRound(typed, round.exercise.course.timeZone);
    if (!(await data.rounds.change(roundId, version, fields))) throw changedMeanwhile(`round ${round.number}`);
    return { exerciseId: round.exerciseId, roundId, remarks };
  },
});
