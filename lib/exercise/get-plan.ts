import { operation } from '@/lib/access/operation';
import { isStarted } from '@/lib/rows/reference';
import { exerciseOnly } from '@/shared/schemas/exercise';
import { findExercise } from './find-exercise';
import { publishChecks } from './publish-checks';
import { criterionView, exerciseView, roundView } from '../rows/exercise';
import { specimenView } from '../rows/specimen';

/** Everything about an exercise, for those who plan it; also one that was put aside. */
export const getPlan = operation({
  name: 'get-plan',
  allow: 'exercise:plan',
  input: exerciseOnly,
  run: async (context, { exerciseId }) => {
    const row = await findExercise(context, exerciseId, { removed: true });
    const { data, now } = context;
    const [rounds, criteria, specimens, references] = await Promise.all([
      data.rounds.ofExercise(exerciseId),
      data.criteria.ofExercise(exerciseId, { retired: true }),
      data.specimens.ofExercise(exerciseId, { retired: true }),
      data.references.ofExercise(exerciseId),
    ]);
    const exercise = exerciseView(row);
    const all = specimens.map(specimenView).map((specimen) => {
      const own = references.filter(({ specimenVersionId }) => specimenVersionId === specimen.versionId);
      return {
        ...specimen,
        references: own.filter((one) => !isStarted(one)).length,
        started: own.filter(isStarted).length,
      };
    });
    const plan = {
      exercise,
      course: { id: row.course.id, title: row.course.title, timeZone: row.course.timeZone },
      rounds: rounds.map(roundView),
      criteria: criteria.map(criterionView).filter(({ retired }) => !retired),
      retiredCriteria: criteria.map(criterionView).filter(({ retired }) => retired),
      specimens: all.filter(({ retired }) => !retired),
      retiredSpecimens: all.filter(({ retired }) => retired),
      proofs: rounds.reduce((sum, round) => sum + round.proofs, 0),
    };
    const referenced = plan.specimens.filter(({ references: count }) => count > 0).length;
    return { ...plan, checks: publishChecks({ ...plan, referenced, now }) };
  },
});

export type Plan = Awaited<ReturnType<typeof getPlan>>;
