import { AppError, changedMeanwhile } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { newReferenceSet } from '@/lib/reference/new-reference-set';
import { isStarted } from '@/lib/rows/reference';
import { exerciseAtVersion } from '@/shared/schemas/exercise';
import { findExercise } from './find-exercise';
import { publishChecks } from './publish-checks';
import { criterionView, exerciseView, roundView } from '../rows/exercise';
import { withExerciseHeld } from './with-exercise-held';

/** Shows an exercise to the course's students, from the version that was on the screen. */
export const publishExercise = operation({
  name: 'publish-exercise',
  allow: 'exercise:plan',
  input: exerciseAtVersion,
  run: async (context, { exerciseId, version }) => {
    const { now } = context;
    const row = await findExercise(context, exerciseId);
    if (row.state !== 'draft') throw new AppError('CONFLICT', 'This exercise has been published already.');
    // First, so that no proof can come before the references it is compared with.
    await newReferenceSet(context, exerciseId);
    await withExerciseHeld(context, exerciseId, async (data) => {
      await refuseUnready(data, exerciseId, now);
      if (!(await data.exercises.change(exerciseId, version, { state: 'published', publishedAt: now })))
        throw changedMeanwhile('this exercise');
      await data.audit.record(
        { courseId: row.courseId, verb: 'exercise published', subject: `exercise:${exerciseId}` },
        now,
      );
    });
    return { exerciseId };
  },
});

async function refuseUnready(data: ScopedData, exerciseId: string, now: Date): Promise<void> {
  const row = await data.exercises.find(exerciseId);
  if (!row) return;
  const rounds = await data.rounds.ofExercise(exerciseId);
  const criteria = await data.criteria.ofExercise(exerciseId);
  const specimens = await data.specimens.ofExercise(exerciseId);
  const references = await data.references.ofExercise(exerciseId);
  const set = new Set(references.filter((one) => !isStarted(one)).map(({ specimenVersionId }) => specimenVersionId));
  const referenced = specimens.filter(({ versions }) => set.has(versions[0]!.id)).length;
  const checks = publishChecks({
    exercise: exerciseView(row),
    rounds: rounds.map(roundView),
    criteria: criteria.map(criterionView),
    specimens,
    referenced,
    now,
  });
  const stops = checks.filter(({ stops }) => stops);
  if (stops.length > 0) throw new AppError('INVALID', `Not published yet. ${stops.map(({ said }) => said).join(' ')}`);
}
