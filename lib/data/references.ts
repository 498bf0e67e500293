import type { Spacing } from '@/shared/schemas/spacing';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { Actor } from './actor';
import type { Db } from './client';
import { newId } from './ids';
import { coursesOf, exercisesOf, membersOf, specimenVersionsOf } from './scope';

type Key = { specimenVersionId: string; authorId: string; slot: number };
export type ReferenceContent = {
  spacing: Spacing;
  tolerances: (number | null)[];
  reasons: (string | null)[];
  carriedFromId: string | null;
};

const author = { author: { select: { id: true, user: { select: { name: true } } } } };

/** References as they are being set. Permissions keep students out; frozen ones are in reference-sets.ts. */
export const referenceData = (actor: Actor, db: Db) => ({
  /** All references on all versions of an exercise's specimens, in the order of their making. */
  ofExercise: (exerciseId: string) =>
    db.reference.findMany({
      where: { specimenVersion: { AND: [specimenVersionsOf(actor), { specimen: { exerciseId } }] } },
      include: author,
      orderBy: { id: 'asc' },
    }),

  ofVersion: (specimenVersionId: string) =>
    db.reference.findMany({
      where: { specimenVersionId, specimenVersion: specimenVersionsOf(actor) },
      include: author,
      orderBy: { id: 'asc' },
    }),

  find: (id: string) =>
    db.reference.findFirst({
      where: { id, specimenVersion: specimenVersionsOf(actor) },
      include: {
        ...author,
        specimenVersion: {
          include: { pack: { select: { payload: true } }, specimen: { select: { id: true, exerciseId: true } } },
        },
      },
    }),

  isMine: async (id: string): Promise<boolean> =>
    (await db.reference.count({
      where: { id, author: membersOf(actor), specimenVersion: specimenVersionsOf(actor) },
    })) === 1,

  byKey: (key: Key) =>
    db.reference.findFirst({ where: { ...key, author: membersOf(actor), specimenVersion: specimenVersionsOf(actor) } }),

  /** @throws P2002 when it was made meanwhile: retry from outside. */
  create: async (key: Key, content: ReferenceContent, now: Date): Promise<string> => {
    const id = newId();
    await db.reference.create({ data: { id, ...key, ...columns(content), updatedAt: now, version: 1 } });
    return id;
  },

  /** Moves a reference to another version of the same specimen; its author stays. */
  copy: async (
    from: { authorId: string; slot: number },
    specimenVersionId: string,
    content: ReferenceContent,
    now: Date,
  ): Promise<void> => {
    await db.reference.create({
      data: {
        id: newId(),
        specimenVersionId,
        authorId: from.authorId,
        slot: from.slot,
        ...columns(content),
        updatedAt: now,
        version: 1,
      },
    });
  },

  /** Compare and swap, for the actor's own reference. */
  change: async (id: string, version: number, content: ReferenceContent, now: Date): Promise<boolean> => {
    const { count } = await db.reference.updateMany({
      where: { id, version, author: membersOf(actor), specimenVersion: specimenVersionsOf(actor) },
      data: { ...columns(content), updatedAt: now, version: version + 1 },
    });
    return count === 1;
  },

  /** Takes the actor's own reference away; what was frozen of it stays. */
  remove: async (id: string): Promise<boolean> =>
    (
      await db.reference.deleteMany({
        where: { id, author: membersOf(actor), specimenVersion: specimenVersionsOf(actor) },
      })
    ).count === 1,
});

const columns = ({ spacing, tolerances, reasons, carriedFromId }: ReferenceContent) => ({
  tracking: spacing.tracking,
  offsets: canonicalJson(spacing.offsets),
  tolerances: canonicalJson(tolerances),
  reasons: canonicalJson(reasons),
  carriedFromId,
});

/** Frozen references: comparisons and releases name a set by its number. */
export const referenceSetData = (actor: Actor, db: Db) => ({
  latest: (exerciseId: string) =>
    db.referenceSet.findFirst({
      where: { exerciseId, exercise: exercisesOf(actor) },
      orderBy: { number: 'desc' },
      include: { items: { include: author } },
    }),

  find: (id: string) =>
    db.referenceSet.findFirst({ where: { id, exercise: exercisesOf(actor) }, include: { items: { include: author } } }),

  ofExercise: (exerciseId: string) =>
    db.referenceSet.findMany({
      where: { exerciseId, exercise: exercisesOf(actor) },
      orderBy: { number: 'desc' },
      include: { madeBy: { select: { user: { select: { name: true } } } }, _count: { select: { items: true } } },
    }),

  /** Which of these sets some proof was compared with; without counting, since a class makes tens of thousands. */
  used: async (exerciseId: string, setIds: readonly string[]): Promise<Set<string>> => {
    const used = await Promise.all(
      setIds.map((referenceSetId) =>
        db.comparison.findFirst({
          where: { referenceSetId, referenceSet: { exerciseId, exercise: exercisesOf(actor) } },
          select: { referenceSetId: true },
        }),
      ),
    );
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
  create: async (
    exerciseId: string,
    number: number,
    madeById: string | null,
    items: readonly FrozenItem[],
    now: Date,
  ): Promise<string> => {
    const id = newId();
    await db.referenceSet.create({
      data: {
        id,
        exerciseId,
        number,
        madeById,
        createdAt: now,
        items: { create: items.map((item) => ({ id: newId(), ...item })) },
      },
    });
    return id;
  },
});

export type FrozenItem = {
  specimenVersionId: string;
  authorId: string;
  slot: number;
  tracking: number;
  offsets: string;
  tolerances: string;
  reasons: string;
};
