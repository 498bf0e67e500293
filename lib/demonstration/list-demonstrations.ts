import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { settingsOf } from '@/lib/rows/exercise';
import { exerciseOnly } from '@/shared/schemas/exercise';
import { demonstrationView, type DemonstrationView } from './demonstration-view';
import { mayLook } from './may-look';

/** The demonstrations of an exercise in the order of its lines: all for staff, the shown ones for students once a round has opened. */
export const listDemonstrations = operation({
  name: 'list-demonstrations',
  allow: 'exercise:see',
  input: exerciseOnly,
  run: async ({ data, now }, { exerciseId }) => {
    const seat = await data.seats.atExercise(exerciseId);
    if (!seat) throw notFound();
    const teaches = seat.member.role !== 'student';
    const rows = mayLook(seat, now) ? await data.demonstrations.ofExercise(exerciseId, teaches) : [];
    const all = rows.map((row) => ({
      ...demonstrationView(row),
      mayChange: teaches && (row.authorId === seat.member.id || seat.member.role === 'instructor'),
    }));
    return {
      exercise: {
        id: exerciseId,
        title: seat.exercise.title,
        referencesShown: settingsOf(seat.exercise).referencesShown,
      },
      course: { id: seat.course.id, title: seat.course.title, timeZone: seat.course.timeZone },
      role: seat.member.role,
      demonstrations: inLineOrder(all.filter(({ removedAt }) => removedAt === null)),
      removed: inLineOrder(all.filter(({ removedAt, mayChange }) => removedAt !== null && mayChange)),
    };
  },
});

const inLineOrder = <View extends DemonstrationView>(views: View[]): View[] =>
  [...views].sort((one, other) => one.position - other.position);
