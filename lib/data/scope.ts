import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import { leadsCourse, type Role, roles, teaches } from '@/shared/schemas/course';
import type { Actor } from './actor';

/**
 * The conditions that make a query an actor's own. Each function of lib/data starts from one of these,
 * so that what is not the actor's is never read at all.
 */
const nothing = { id: { in: [] as string[] } };

/** Courses in which the actor holds one of the running operation's roles (narrowed to `among`, where given). */
export function coursesOf(actor: Actor, among?: readonly Role[]): Prisma.CourseWhereInput {
  const members = membersOf(actor, among);
  return actor.kind === 'system' ? {} : { members: { some: members } };
}

/** The actor's own memberships that count for the running operation. */
export function membersOf(actor: Actor, among?: readonly Role[]): Prisma.MemberWhereInput {
  if (actor.kind === 'system') return {};
  if (actor.kind === 'visitor') return nothing;
  const counted = actor.roles.filter((role) => !among || among.includes(role));
  return { userId: actor.userId, removedAt: null, role: { in: [...counted] } };
}

/** The roles of those who teach, and of those who don't. */
export const staff: readonly Role[] = roles.filter(teaches);
export const studentRoles: readonly Role[] = roles.filter((role) => !teaches(role));
/** Of those who teach, the ones who answer for the course. */
export const instructorRoles: readonly Role[] = roles.filter(leadsCourse);

/** The actor's own person. */
export function self(actor: Actor): Prisma.UserWhereInput {
  if (actor.kind === 'system') return {};
  return actor.kind === 'person' ? { id: actor.userId, erasedAt: null } : nothing;
}

/**
 * Exercises that exist for an actor: all in the courses of staff, and the published and closed ones in a student's.
 * Removed ones only where `removed` asks for them.
 */
export function exercisesOf(actor: Actor, options: { removed?: boolean } = {}): Prisma.ExerciseWhereInput {
  const forStaff: Prisma.ExerciseWhereInput = {
    course: coursesOf(actor, staff),
    ...(options.removed ? {} : { removedAt: null }),
  };
  const forStudents: Prisma.ExerciseWhereInput = {
    course: coursesOf(actor, studentRoles),
    removedAt: null,
    state: { in: ['published', 'closed'] },
  };
  return { OR: [forStaff, forStudents] };
}

export const roundsOf = (actor: Actor): Prisma.RoundWhereInput => ({ exercise: exercisesOf(actor) });
export const criteriaOf = (actor: Actor): Prisma.CriterionWhereInput => ({ exercise: exercisesOf(actor) });
export const specimensOf = (actor: Actor): Prisma.SpecimenWhereInput => ({ exercise: exercisesOf(actor) });
export const specimenVersionsOf = (actor: Actor): Prisma.SpecimenVersionWhereInput => ({
  specimen: specimensOf(actor),
});

/** Rounds whose work the actor looks at as staff. */
export const roundsOfStaff = (actor: Actor): Prisma.RoundWhereInput => ({
  exercise: { removedAt: null, course: coursesOf(actor, staff) },
});

/** Proofs that the actor looks at as staff. */
export const proofsOfStaff = (actor: Actor): Prisma.ProofWhereInput => ({ round: roundsOfStaff(actor) });

/** A proof by its id, or by its alias where names are hidden (ids reveal when they were made). */
export const named = (token: string): Prisma.ProofWhereInput => ({
  OR: [{ id: token }, { markTasks: { some: { alias: token } } }],
});

/** The actor's own proofs. */
export const proofsOfSelf = (actor: Actor): Prisma.ProofWhereInput => ({ member: membersOf(actor, studentRoles) });
