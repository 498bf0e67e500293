import type { Actor } from '@/lib/access/actor';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { TypedCriterion } from '@/shared/schemas/criterion';
import type { Db } from './client';
import { criteriaOf, exercisesOf } from './exercise-scope';
import { newId } from './ids';

/** Criteria of an exercise. A change is a new version: marks keep the one they were given by. */
export const criterionData = (actor: Actor, db: Db) => ({
  /** In their order, each with its newest version; with `retired`, those taken back, too. */
  ofExercise: (exerciseId: string, options: { retired?: boolean } = {}) =>
    db.criterion.findMany({
      where: { AND: [criteriaOf(actor), { exerciseId, ...(options.retired ? {} : { retiredAt: null }) }] },
      orderBy: [{ position: 'asc' }, { createdAt: 'asc' }],
      include: { versions: { orderBy: { number: 'desc' }, take: 1 } },
    }),

  find: (id: string) =>
    db.criterion.findFirst({
      where: { AND: [criteriaOf(actor), { id }] },
      include: { versions: { orderBy: { number: 'desc' }, take: 1 }, exercise: { select: { id: true, state: true } } },
    }),

  /** False where the exercise is not the actor's. */
  add: async (exerciseId: string, typed: TypedCriterion, now: Date): Promise<boolean> => {
    const exercise = await db.exercise.findFirst({
      where: { AND: [exercisesOf(actor), { id: exerciseId }] },
      select: { id: true },
    });
    if (!exercise) return false;
    const last = await db.criterion.aggregate({ where: { exerciseId }, _max: { position: true } });
    const id = newId();
    await db.criterion.create({
      data: {
        id,
        exerciseId,
        position: (last._max.position ?? 0) + 1,
        createdAt: now,
        versions: { create: { ...columns(typed), id: newId(), number: 1, createdAt: now } },
      },
    });
    return true;
  },

  /** @throws P2002 when that version exists by now: somebody else was first. */
  addVersion: async (criterionId: string, number: number, typed: TypedCriterion, now: Date): Promise<void> => {
    await db.criterionVersion.create({ data: { ...columns(typed), id: newId(), criterionId, number, createdAt: now } });
  },

  setRetired: async (id: string, retiredAt: Date | null): Promise<boolean> =>
    (await db.criterion.updateMany({ where: { AND: [criteriaOf(actor), { id }] }, data: { retiredAt } })).count === 1,
});

const columns = ({ levels, title, description, basis, weight }: TypedCriterion) => ({
  title,
  description,
  basis,
  weight,
  levels: canonicalJson(levels),
});
