import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { roundOnly } from '@/shared/schemas/exercise';
import { exerciseView, roundView } from '../rows/exercise';

/** One round with the students' own due dates, for the page that changes it. */
export const getRound = operation({
  name: 'get-round',
  allow: 'exercise:plan',
  input: roundOnly,
  run: async ({ data }, { roundId }) => {
    const row = await data.rounds.find(roundId);
    if (!row) throw notFound();
    const [rounds, extensions, students] = await Promise.all([
      data.rounds.ofExercise(row.exerciseId),
      data.rounds.extensions(row.exerciseId),
      data.members.countStudents(row.exercise.courseId, ''),
    ]);
    return {
      round: roundView(row),
      exercise: exerciseView(row.exercise),
      courseId: row.exercise.course.id,
      timeZone: row.exercise.course.timeZone,
      students: students.all,
      isLast: rounds.at(-1)?.id === roundId,
      extensions: extensions
        .filter((one) => one.roundId === roundId)
        .map(({ id, dueAt, dueLocal, member }) => ({ id, dueAt, dueLocal, name: nameOf(member) })),
    };
  },
});

const nameOf = (member: { user: { name: string } | null }): string => member.user?.name ?? 'a former member';
