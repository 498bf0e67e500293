import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { settingsOf } from '@/lib/rows/exercise';
import { accommodationsOf } from '@/lib/work/rounds';
import { seeDemonstrationInput } from '@/shared/schemas/demonstration';
import { demonstrationView } from './demonstration-view';
import { mayLook } from './may-look';

/** One demonstration, to be looked at step by step. For a student one that is not shown is not there. */
export const seeDemonstration = operation({
  name: 'see-demonstration',
  allow: 'exercise:see',
  input: seeDemonstrationInput,
  run: async ({ data, now, actor }, { exerciseId, demonstrationId }) => {
    const seat = await data.seats.atExercise(exerciseId);
    const row = seat && mayLook(seat, now) ? await data.demonstrations.find(demonstrationId) : null;
    if (!seat || row?.specimenVersion.specimen.exerciseId !== exerciseId || actor.kind !== 'person') throw notFound();
    const { member } = seat;
    return {
      exercise: {
        id: exerciseId,
        title: seat.exercise.title,
        referencesShown: settingsOf(seat.exercise).referencesShown,
      },
      course: { id: seat.course.id, title: seat.course.title, timeZone: seat.course.timeZone },
      role: member.role,
      personKey: actor.userId,
      accommodations: accommodationsOf(member),
      demonstration: demonstrationView(row),
      mayChange: member.role !== 'student' && (await data.demonstrations.mayKeep(demonstrationId)),
    };
  },
});
