import { operation } from '@/lib/access/operation';
import { isStarted } from '@/lib/rows/reference';
import { exerciseOnly } from '@/shared/schemas/exercise';
import { findExercise } from './find-exercise';
import { exerciseView, roundView } from '../rows/exercise';
import { specimenView } from '../rows/specimen';

/** An exercise as staff look after it: where each round stands, and the lines. */
export const getOverview = operation({
  name: 'get-overview',
  allow: 'class:see',
  input: exerciseOnly,
  run: async (context, { exerciseId }) => {
    const row = await findExercise(context, exerciseId);
    const { data } = context;
    const [member, rounds, students, specimens, references] = await Promise.all([
      data.exercises.myMember(row.courseId),
      data.rounds.ofExercise(exerciseId),
      data.members.countStudents(row.courseId, '').then(({ all }) => all),
      data.specimens.ofExercise(exerciseId),
      data.references.ofExercise(exerciseId),
    ]);
    const tallies = await data.roundState.tallies(rounds.map(({ id }) => id));
    const set = new Set(references.filter((one) => !isStarted(one)).map(({ specimenVersionId }) => specimenVersionId));
    const lines = specimens.map(specimenView);
    return {
      exercise: exerciseView(row),
      course: { id: row.course.id, title: row.course.title, timeZone: row.course.timeZone },
      mayPlan: member?.role === 'instructor',
      rounds: rounds.map((round) => ({ ...roundView(round), senders: tallies.get(round.id)?.sent ?? 0 })),
      students,
      specimens: lines,
      referenced: lines.filter(({ versionId }) => set.has(versionId)).length,
    };
  },
});

export type Overview = Awaited<ReturnType<typeof getOverview>>;
