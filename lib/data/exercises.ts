import type { TypedCriterion } from '@/shared/schemas/criterion';
import type { ExerciseSettings, ExerciseState } from '@/shared/schemas/exercise';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { Actor } from './actor';
import type { Db } from './client';
import { newId } from './ids';
import { namedSections } from './rounds';
import { coursesOf, criteriaOf, exercisesOf, membersOf } from './scope';

type NewExercise = { courseId: string; title: string; brief: string; settings: ExerciseSettings };
type Patch = {
  title?: string;
  brief?: string;
  settings?: ExerciseSettings;
  state?: ExerciseState;
  publishedAt?: Date;
  closedAt?: Date | null;
  removedAt?: Date | null;
};

/** Exercises, without what belongs to them. */
export const exerciseData = (actor: Actor, db: Db) => ({
  /** Makes an exercise at the end of a course; null where the course is not the actor's. */
  create: async ({ courseId, title, brief, settings }: NewExercise, now: Date): Promise<string | null> => {
    const course = await db.course.findFirst({
      where: { AND: [coursesOf(actor), { id: courseId, archivedAt: null }] },
      select: { id: true },
    });
    if (!course) return null;
    const last = await db.exercise.aggregate({ where: { courseId }, _max: { position: true } });
    const exercise = {
      id: newId(),
      courseId,
      title,
      brief,
      state: 'draft',
      settings: canonicalJson(settings),
      position: (last._max.position ?? 0) + 1,
      createdAt: now,
    };
    await db.exercise.create({ data: exercise });
    return exercise.id;
  },

  /** The exercise with its course. `removed` finds removed ones, too. */
  find: (id: string, options: { removed?: boolean } = {}) =>
    db.exercise.findFirst({
      where: { AND: [exercisesOf(actor, options), { id }] },
      include: { course: { select: { id: true, title: true, timeZone: true, archivedAt: true } } },
    }),

  /** The exercises of a course in their order, with rounds; those put aside are left out. */
  ofCourse: (courseId: string) =>
    db.exercise.findMany({
      where: { AND: [exercisesOf(actor), { courseId }] },
      orderBy: [{ position: 'asc' }, { createdAt: 'asc' }],
      include: {
        rounds: { orderBy: { number: 'asc' }, include: { sections: namedSections } },
        _count: { select: { specimens: { where: { retiredAt: null } } } },
      },
    }),

  /** Compare and swap: false when the version is another one by now, or the exercise is not the actor's. */
  change: async (id: string, version: number, patch: Patch): Promise<boolean> => {
    const { settings, ...columns } = patch;
    const { count } = await db.exercise.updateMany({
      where: { AND: [exercisesOf(actor, { removed: true }), { id, version }] },
      data: { ...columns, ...(settings && { settings: canonicalJson(settings) }), version: version + 1 },
    });
    return count === 1;
  },

  /** Inside a transaction: a write that changes nothing, so that others who hold the exercise wait until it ends. */
  hold: async (id: string): Promise<boolean> =>
    (
      await db.exercise.updateMany({
        where: { AND: [exercisesOf(actor), { id }] },
        data: { position: { increment: 0 } },
      })
    ).count === 1,

  /** Drafts of a course that were put aside. */
  putAside: (courseId: string) =>
    db.exercise.findMany({
      where: { AND: [exercisesOf(actor, { removed: true }), { courseId, removedAt: { not: null } }] },
      orderBy: { createdAt: 'asc' },
      select: { id: true, title: true, removedAt: true },
    }),

  /** The actor's own membership in the exercise's course. */
  myMember: (courseId: string) =>
    db.member.findFirst({
      where: { AND: [membersOf(actor), { courseId }] },
      select: {
        id: true,
        role: true,
        sectionId: true,
        accommodations: true,
        extensions: { select: { roundId: true, dueAt: true } },
      },
    }),
});

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

  /** @throws P2002 when that version already exists: another request was first. */
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
