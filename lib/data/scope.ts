import type { Actor } from '@/lib/access/actor';
import type { Role } from '@/lib/access/permissions';
import type { Prisma } from '@/prisma/generated/sqlite/client/client';

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

export const staff = ['instructor', 'assistant'] as const satisfies readonly Role[];

/** The actor's own person. */
export function self(actor: Actor): Prisma.UserWhereInput {
  if (actor.kind === 'system') return {};
  return actor.kind === 'person' ? { id: actor.userId, erasedAt: null } : nothing;
}
