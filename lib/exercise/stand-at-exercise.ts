import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { roleSchema } from '@/shared/schemas/course';
import { idSchema } from '@/shared/schemas/id';

/** In which role the caller stands before an exercise, so that the page can show that role's side of it. */
export const standAtExercise = operation({
  name: 'stand-at-exercise',
  allow: 'exercise:see',
  input: z.strictObject({ exerciseId: idSchema }),
  run: async ({ data }, { exerciseId }) => {
    const seat = await data.seats.atExercise(exerciseId);
    if (!seat) throw notFound();
    return { role: z.parse(roleSchema, seat.member.role), title: seat.exercise.title };
  },
});
