import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { changedMeanwhile } from '@/lib/exercise/changed-meanwhile';
import { setSecondMarkingInput } from '@/shared/schemas/second-marking';
import { secondMarkingOf } from './second-sample';

/** Says which proofs of a round a second marker looks at. What was begun stays, whatever is chosen. */
export const setSecondMarking = operation({
  name: 'set-second-marking',
  allow: 'exercise:plan',
  input: setSecondMarkingInput,
  run: async ({ data, now }, { roundId, version, ...setting }) => {
    const round = await data.rounds.find(roundId);
    if (!round) throw notFound();
    const before = secondMarkingOf(round);
    await data.transaction(async (inside) => {
      if (!(await inside.rounds.setSecondMarker(roundId, version, setting)))
        throw changedMeanwhile(`round ${round.number}`);
      await inside.audit.record(
        {
          courseId: round.exercise.courseId,
          verb: 'second marking set',
          subject: `round:${roundId}`,
          details: { before, after: setting },
        },
        now,
      );
    });
    return { exerciseId: round.exerciseId, roundId };
  },
});
