import type { Actor } from '@/lib/access/actor';
import type { Db } from './client';
import { exercisesOf } from './exercise-scope';
import { newId } from './ids';
import { coursesOf } from './scope';

const author = { author: { select: { id: true, user: { select: { name: true } } } } };

/** Frozen references: comparisons and releases name a set by its number. */
export const referenceSetData = (actor: Actor, db: Db) => ({
  latest: (exerciseId: string) =>
    db.referenceSet.findFirst({
      where: { exerciseId, exercise: exercisesOf(actor) },
      orderBy: { number: 'desc' },
      include: { items: { include: author } },
    }),

  find: (id: string) => db.referenceSet.findFirst({ where: { id, exercise: exercisesOf(actor) }, include: { items: { include: author } } }),

  ofExercise: (exerciseId: string) =>
    db.referenceSet.findMany({
      where: { exerciseId, exercise: exercisesOf(actor) },
      orderBy: { number: 'desc' },
      include: { madeBy: { select: { user: { select: { name: true } } } }, _count: { select: { items: true } } },
    }),

  /** Which of these sets some proof was compared with; without counting, since a class makes tens of thousands. */
  used: async (exerciseId: string, setIds: readonly string[]): Promise<Set<string>> => {
    const used = await Promise.all(setIds.map((referenceSetId) =>
      db.comparison.findFirst({ where: { referenceSetId, referenceSet: { exerciseId, exercise: exercisesOf(actor) } }, select: { referenceSetId: true } })));
    return new Set(used.flatMap((one) => one?.referenceSetId ?? []));
  },

  /** Names of those who set references, by member; who was erased has none. */
  authorNames: async (memberIds: readonly string[]): Promise<Map<string, string>> => {
    const members = await db.member.findMany({
      where: { id: { in: [...new Set(memberIds)] }, course: coursesOf(actor) },
      select: { id: true, user: { select: { name: true } } },
    });
    return new Map(members.flatMap(({ id, user }) => (user ? [[id, user.name] as const] : [])));
  },

  /** The set that went out with the newest release of a round of this exercise to a member, or null. */
  releasedTo: async (exerciseId: string, memberId: string) => {
    const release = await db.release.findFirst({
      where: { memberId, round: { exercise: { AND: [exercisesOf(actor), { id: exerciseId }] } } },
      orderBy: [{ round: { number: 'desc' } }, { number: 'desc' }],
      select: { id: true, referenceSetId: true },
    });
    return release;
  },

  /** @throws P2002 when another set took the number: retry from outside. */
  create: async (exerciseId: string, number: number, madeById: string | null, items: readonly FrozenItem[], now: Date): Promise<string> => {
    const id = newId();
    await db.referenceSet.create({
      data: { id, exerciseId, number, madeById, createdAt: now, items: { create: items.map((item) => ({ id: newId(), ...item })) } },
    });
    return id;
  },
});

export type FrozenItem = { specimenVersionId: string; authorId: string; slot: number; tracking: number; offsets: string; tolerances: string; reasons: string };
