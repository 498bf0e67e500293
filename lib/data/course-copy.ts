import type { Actor } from './actor';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { LateRule } from '@/shared/schemas/exercise';
import type { Db } from './client';
import { newId } from './ids';
import { coursesOf, membersOf } from './scope';

/** When the rounds of the copy are, by the id of the round each is copied from. */
export type CopiedDates = ReadonlyMap<
  string,
  { opensLocal: string | null; opensAt: Date | null; dueLocal: string | null; dueAt: Date | null; lateRule: LateRule }
>;
type Into = { courseId: string; memberId: string; userId: string };

const newest = { orderBy: { number: 'desc' as const }, take: 1 };

/**
 * A course as it is taken on to another term: what was planned in it, and of people only what the actor set themselves.
 */
export const courseCopyData = (actor: Actor, db: Db) => ({
  read: (courseId: string) => readWhole(actor, db, courseId),

  settings: (courseId: string, settings: string) =>
    db.course.updateMany({ where: { AND: [{ id: courseId }, coursesOf(actor)] }, data: { settings } }),

  /** Writes one exercise of `read` into a new course as a draft; packs are named by their content and used again. */
  exercise: async (
    from: CopiedCourse['exercises'][number],
    dates: CopiedDates,
    { courseId, memberId }: Into,
    now: Date,
  ): Promise<void> => {
    const exerciseId = newId();
    await db.exercise.create({
      data: {
        id: exerciseId,
        courseId,
        title: from.title,
        brief: from.brief,
        state: 'draft',
        settings: from.settings,
        position: from.position,
        createdAt: now,
      },
    });
    await db.round.createMany({
      data: from.rounds.map(({ id, number, title, secondMarker }) => {
        const { lateRule, ...when } = dates.get(id)!;
        return {
          id: newId(),
          exerciseId,
          number,
          title,
          secondMarker,
          state: 'open',
          lateRule: canonicalJson(lateRule),
          ...when,
        };
      }),
    });
    const criteria = from.criteria.map((criterion) => ({ id: newId(), criterion }));
    await db.criterion.createMany({
      data: criteria.map(({ id, criterion }) => ({ id, exerciseId, position: criterion.position, createdAt: now })),
    });
    await db.criterionVersion.createMany({
      data: criteria.flatMap(({ id, criterion: { versions } }) =>
        versions.map(({ title, description, basis, weight, levels }) => ({
          id: newId(),
          criterionId: id,
          number: 1,
          title,
          description,
          basis,
          weight,
          levels,
          createdAt: now,
        })),
      ),
    });
    const specimens = from.specimens.map((specimen) => ({ id: newId(), versionId: newId(), specimen }));
    await db.specimen.createMany({
      data: specimens.map(({ id, specimen }) => ({ id, exerciseId, position: specimen.position, createdAt: now })),
    });
    await db.specimenVersion.createMany({
      data: specimens.flatMap(({ id, versionId, specimen: { versions } }) =>
        versions.map(({ text, packSha, size, unit, ground, details }) => ({
          id: versionId,
          specimenId: id,
          number: 1,
          text,
          packSha,
          size,
          unit,
          ground,
          details,
          createdAt: now,
        })),
      ),
    });
    await db.reference.createMany({
      data: specimens.flatMap(({ versionId, specimen: { versions } }) =>
        versions.flatMap(({ references }) =>
          references.map(({ slot, tracking, offsets, tolerances, reasons }) => ({
            id: newId(),
            specimenVersionId: versionId,
            authorId: memberId,
            slot,
            tracking,
            offsets,
            tolerances,
            reasons,
            updatedAt: now,
            version: 1,
          })),
        ),
      ),
    });
    await db.demonstration.createMany({
      data: specimens.flatMap(({ versionId, specimen: { versions } }) =>
        versions.flatMap(({ demonstrations }) =>
          demonstrations.map(({ title, steps }) => ({
            id: newId(),
            specimenVersionId: versionId,
            authorId: memberId,
            title,
            steps,
            createdAt: now,
          })),
        ),
      ),
    });
  },

  /**
   * Stock notes become those of the person who copies, so that they can be retired; the same goes for licence decisions
   * about faces.
   */
  rest: async (
    { faces, stockNotes }: Pick<CopiedCourse, 'faces' | 'stockNotes'>,
    { courseId, memberId, userId }: Into,
    now: Date,
  ): Promise<void> => {
    await db.courseFace.createMany({
      data: faces.map(({ faceId, licenceNote }) => ({
        id: newId(),
        courseId,
        faceId,
        licenceNote,
        addedById: userId,
        createdAt: now,
      })),
    });
    await db.stockNote.createMany({
      data: stockNotes.map(({ fault, body }) => ({
        id: newId(),
        courseId,
        authorId: memberId,
        shared: true,
        fault,
        body,
        createdAt: now,
      })),
    });
  },
});

/** Everything of a course that can be taken on. References and demonstrations are the actor's own. */
function readWhole(actor: Actor, db: Db, courseId: string) {
  const own = { author: { AND: [membersOf(actor), { courseId }] } };
  return db.course.findFirst({
    where: { AND: [{ id: courseId }, coursesOf(actor)] },
    include: {
      faces: { where: { removedAt: null } },
      stockNotes: { where: { shared: true, removedAt: null } },
      exercises: {
        where: { removedAt: null },
        orderBy: [{ position: 'asc' }, { createdAt: 'asc' }],
        include: {
          rounds: { orderBy: { number: 'asc' } },
          criteria: {
            where: { retiredAt: null },
            orderBy: [{ position: 'asc' }, { createdAt: 'asc' }],
            include: { versions: newest },
          },
          specimens: {
            where: { retiredAt: null },
            orderBy: [{ position: 'asc' }, { createdAt: 'asc' }],
            include: {
              versions: {
                ...newest,
                include: {
                  references: { where: own },
                  demonstrations: { where: { ...own, removedAt: null } },
                  _count: { select: { references: true } },
                },
              },
            },
          },
        },
      },
    },
  });
}

export type CopiedCourse = NonNullable<Awaited<ReturnType<typeof readWhole>>>;
