import type { Actor } from '@/lib/access/actor';
import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import { coursesOf, staff } from './scope';

/**
 * Exercises that exist for an actor: all that stand in the staff's courses, and for students the published and closed
 * ones of theirs. Ones put aside are there only where `removed` asks for them.
 */
export function exercisesOf(actor: Actor, options: { removed?: boolean } = {}): Prisma.ExerciseWhereInput {
  const forStaff: Prisma.ExerciseWhereInput = { course: coursesOf(actor, staff), ...(options.removed ? {} : { removedAt: null }) };
  const forStudents: Prisma.ExerciseWhereInput = { course: coursesOf(actor, ['student']), removedAt: null, state: { in: ['published', 'closed'] } };
  return { OR: [forStaff, forStudents] };
}

export const roundsOf = (actor: Actor): Prisma.RoundWhereInput => ({ exercise: exercisesOf(actor) });
export const criteriaOf = (actor: Actor): Prisma.CriterionWhereInput => ({ exercise: exercisesOf(actor) });
export const specimensOf = (actor: Actor): Prisma.SpecimenWhereInput => ({ exercise: exercisesOf(actor) });
export const specimenVersionsOf = (actor: Actor): Prisma.SpecimenVersionWhereInput => ({ specimen: specimensOf(actor) });
