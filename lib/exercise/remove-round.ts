import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { removeRoundInput } from '@/shared/schemas/exercise';

/** Takes the last round away, as long as nobody has sent a proof to it. */
export const removeRound = operation({
  name: 'remove-round',
  allow: 'exercise:plan',
  input: removeRoundInput,
  run: async ({ data }, { roundId, version }) => {
    const round = await data.rounds.find(roundId);
    if (!round) throw notFound();
    const rounds = await data.rounds.ofExercise(round.exerciseId);
    if (rounds.at(-1)?.id !== roundId)
      throw new AppError('CONFLICT', `Only the last round can be deleted, and round ${round.number} is not the last.`);
    if (!(await data.rounds.remove(roundId, version))) {
      throw new AppError(
        'CONFLICT',
        `Round ${round.number} was kept: a proof was sent to it, or it was changed, since you opened this page.`,
      );
    }
    return { exerciseId: round.exerciseId };
  },
});
