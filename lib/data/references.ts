import type { Actor } from '@/lib/access/actor';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { Spacing } from '@/shared/schemas/spacing';
import type { Db } from './client';
import { specimenVersionsOf } from './exercise-scope';
import { newId } from './ids';
import { membersOf } from './scope';

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

  /** Puts somebody's reference on another version of the same specimen, as its author's. */
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
