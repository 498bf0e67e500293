import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { spacingOf } from '@/lib/rows/spacing';
import { specimenView } from '@/lib/rows/specimen';
import { studentMinutes } from '@/shared/exercise/student-minutes';
import { exerciseOnly } from '@/shared/schemas/exercise';

/** An estimate of the minutes that a student needs to space all lines of an exercise once. */
export const getStudentMinutes = operation({
  name: 'get-student-minutes',
  allow: 'exercise:plan',
  input: exerciseOnly,
  run: async ({ data }, { exerciseId }) => {
    const exercise = await data.exercises.find(exerciseId);
    if (!exercise) throw notFound();
    const [specimens, worked] = await Promise.all([
      data.specimens.ofExercise(exerciseId),
      data.specimens.workedInCourse(exercise.courseId),
    ]);
    const gaps = specimens.map(specimenView).reduce((sum, { pairCount }) => sum + pairCount, 0);
    const past = worked.map((draft) => ({
      student: draft.memberId,
      gaps: spacingOf(draft).offsets.length,
      changes: draft.changes.map(({ receivedAt }) => receivedAt.getTime()),
    }));
    return { gaps, ...studentMinutes(gaps, past) };
  },
});
