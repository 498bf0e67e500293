import type { Actor } from './actor';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { SpecimenDetails } from '@/shared/schemas/specimen';
import type { Ground, Size, Spacing } from '@/shared/schemas/spacing';
import type { Db } from './client';
import { coursesOf, exercisesOf, membersOf, specimensOf, specimenVersionsOf, staff, studentRoles } from './scope';
import { newId } from './ids';

export type NewVersion = { text: string; packSha: string; size: Size; ground: Ground; details: SpecimenDetails };
/** Enough for a pace, and few enough to be read at each look. */
const lastWorked = 60;

type Following = NewVersion & { specimenId: string; number: number; previousId: string; pairMap: (number | null)[] };

const newest = {
  orderBy: { number: 'desc' as const },
  take: 1,
  include: {
    pack: {
      select: {
        payload: true,
        faceId: true,
        face: { select: { id: true, family: true, style: true, weight: true, details: true, axes: true } },
      },
    },
  },
};

/** Specimens and their versions. The version with the highest number is the one in use. */
export const specimenData = (actor: Actor, db: Db) => ({
  /** In their order, each with the version in use and its pack. */
  ofExercise: (exerciseId: string, options: { retired?: boolean } = {}) =>
    db.specimen.findMany({
      where: { AND: [specimensOf(actor), { exerciseId, ...(options.retired ? {} : { retiredAt: null }) }] },
      orderBy: [{ position: 'asc' }, { createdAt: 'asc' }],
      include: { versions: newest },
    }),

  find: (id: string) =>
    db.specimen.findFirst({
      where: { AND: [specimensOf(actor), { id }] },
      include: {
        versions: newest,
        exercise: { include: { course: { select: { id: true, title: true, timeZone: true } } } },
      },
    }),

  /** One version, in use or not, with its pack and the exercise it belongs to. */
  version: (id: string) =>
    db.specimenVersion.findFirst({
      where: { AND: [specimenVersionsOf(actor), { id }] },
      include: {
        pack: { select: { payload: true } },
        specimen: {
          select: {
            id: true,
            retiredAt: true,
            exercise: { select: { id: true, courseId: true, settings: true, state: true } },
          },
        },
      },
    }),

  count: (exerciseId: string) =>
    db.specimen.count({ where: { AND: [specimensOf(actor), { exerciseId, retiredAt: null }] } }),

  /** Puts specimens at the end, in the order given. Returns their ids; null where the exercise is not the actor's. */
  add: async (exerciseId: string, list: readonly NewVersion[], now: Date): Promise<string[] | null> => {
    const exercise = await db.exercise.findFirst({
      where: { AND: [exercisesOf(actor), { id: exerciseId }] },
      select: { id: true },
    });
    if (!exercise) return null;
    const last = await db.specimen.aggregate({ where: { exerciseId }, _max: { position: true } });
    const first = (last._max.position ?? 0) + 1;
    const rows = list.map((one, index) => ({ id: newId(), exerciseId, position: first + index, createdAt: now }));
    await db.specimen.createMany({ data: rows });
    await db.specimenVersion.createMany({
      data: list.map((one, index) => ({
        id: newId(),
        specimenId: rows[index]!.id,
        number: 1,
        createdAt: now,
        ...columns(one),
      })),
    });
    return rows.map(({ id }) => id);
  },

  /** @throws P2002 when that number already exists: another request was first. */
  addVersion: async ({ specimenId, number, previousId, pairMap, ...one }: Following, now: Date): Promise<string> => {
    const id = newId();
    await db.specimenVersion.create({
      data: { id, specimenId, number, previousId, pairMap: canonicalJson(pairMap), createdAt: now, ...columns(one) },
    });
    return id;
  },

  setRetired: async (id: string, retiredAt: Date | null): Promise<boolean> =>
    (await db.specimen.updateMany({ where: { AND: [specimensOf(actor), { id }] }, data: { retiredAt } })).count === 1,

  setPosition: async (id: string, position: number): Promise<boolean> =>
    (await db.specimen.updateMany({ where: { AND: [specimensOf(actor), { id }] }, data: { position } })).count === 1,

  /** Drafts on a version, of all members: they move when another version follows. */
  drafts: (specimenVersionId: string) =>
    db.draft.findMany({ where: { specimenVersionId, specimenVersion: specimenVersionsOf(actor) } }),

  /** The lines that students of a course worked on last, in their drafts, with when each change arrived. For staff. */
  workedInCourse: (courseId: string) =>
    db.draft.findMany({
      where: {
        purpose: 'work',
        version: { gt: 1 },
        member: { courseId, role: { in: [...studentRoles] }, removedAt: null, course: coursesOf(actor, staff) },
      },
      orderBy: [{ updatedAt: 'desc' }, { id: 'asc' }],
      take: lastWorked,
      select: {
        memberId: true,
        tracking: true,
        offsets: true,
        changes: { where: { clientId: { not: { startsWith: 'moved-to-' } } }, select: { receivedAt: true } },
      },
    }),

  /** The actor's own trial of a version: what they set on its bench. */
  ownTrial: (specimenVersionId: string) =>
    db.draft.findFirst({
      where: { specimenVersionId, purpose: 'trial', member: membersOf(actor) },
      select: { tracking: true, offsets: true },
    }),

  /** How many students have a draft of their work on a version. */
  workDrafts: (specimenVersionId: string) =>
    db.draft.count({ where: { specimenVersionId, purpose: 'work', specimenVersion: specimenVersionsOf(actor) } }),

  /** Proofs that hold this version; they keep it. */
  proofsOf: (specimenVersionId: string) =>
    db.proofItem.count({ where: { specimenVersionId, specimenVersion: specimenVersionsOf(actor) } }),

  /**
   * Puts one draft on another version, as a change of its own in the draft's journal.
   * @throws P2002 when a student's own change followed the same version first: retry the whole from outside.
   */
  moveDraft: async (
    draft: { id: string; version: number },
    toVersionId: string,
    { tracking, offsets }: Spacing,
    now: Date,
  ): Promise<void> => {
    const moved = { tracking, offsets: canonicalJson(offsets) };
    await db.draftChange.create({
      data: {
        id: newId(),
        draftId: draft.id,
        clientId: `moved-to-${toVersionId}`,
        seq: 1,
        baseVersion: draft.version,
        ...moved,
        receivedAt: now,
      },
    });
    await db.draft.updateMany({
      where: { id: draft.id, version: draft.version, specimenVersion: specimenVersionsOf(actor) },
      data: { ...moved, specimenVersionId: toVersionId, updatedAt: now, version: draft.version + 1 },
    });
  },
});

const columns = ({ size, details, ...rest }: NewVersion) => ({
  ...rest,
  size: size.value,
  unit: size.unit,
  details: canonicalJson(details),
});
