import type { Actor } from '@/lib/access/actor';
import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import { coursesOf, membersOf, staff } from './scope';

/** Rounds whose work the actor looks at as staff. */
export const roundsOfStaff = (actor: Actor): Prisma.RoundWhereInput => ({ exercise: { removedAt: null, course: coursesOf(actor, staff) } });

/** Proofs that the actor looks at as staff. */
export const proofsOfStaff = (actor: Actor): Prisma.ProofWhereInput => ({ round: roundsOfStaff(actor) });

/** A proof by its id, or by the alias that stands for it where names are hidden (ids tell when they were made). */
export const named = (token: string): Prisma.ProofWhereInput => ({ OR: [{ id: token }, { markTasks: { some: { alias: token } } }] });

/** The actor's own proofs. */
export const proofsOfSelf = (actor: Actor): Prisma.ProofWhereInput => ({ member: membersOf(actor, ['student']) });
