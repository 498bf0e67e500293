import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { Actor } from './actor';
import type { Db } from './client';
import { newId } from './ids';
import { coursesOf, membersOf, named, proofsOfSelf, proofsOfStaff, staff } from './scope';

export type NewNote = {
  proofItemId: string;
  requestKey: string;
  fromPair: number | null;
  toPair: number | null;
  taskId: string | null;
  authorId: string;
  suggestion: number[] | null;
  body: string;
  now: Date;
};
type Entry = { noteId: string; seq: number; authorId: string; body: string; replacesSeq: number | null; now: Date };

const withEntries = {
  entries: {
    orderBy: { seq: 'asc' },
    include: { author: { select: { id: true, role: true, user: { select: { name: true } } } } },
  },
  proofItem: { select: { id: true, specimenVersionId: true, tracking: true, offsets: true, proofId: true } },
} satisfies Prisma.NoteInclude;
export type NoteRow = Prisma.NoteGetPayload<{ include: typeof withEntries }>;

/**
 * Notes as staff keep them. Students never read these rows: they see releases (lib/data/releases.ts) and threads of
 * released notes.
 */
export const noteData = (actor: Actor, db: Db) => {
  const ofStaff: Prisma.NoteWhereInput = { proofItem: { proof: proofsOfStaff(actor) } };
  return {
    /** The line of a proof that a note is written at. */
    item: (token: string, specimenVersionId: string) =>
      db.proofItem.findFirst({
        where: { specimenVersionId, proof: { AND: [named(token), proofsOfStaff(actor)] } },
        select: { id: true, tracking: true, offsets: true, proofId: true },
      }),

    byId: (id: string) =>
      db.note.findFirst({
        where: { AND: [{ id }, ofStaff] },
        include: {
          ...withEntries,
          proofItem: {
            select: {
              ...withEntries.proofItem.select,
              proof: { select: { round: { select: { exercise: { select: { courseId: true } } } } } },
            },
          },
        },
      }),

    byKey: (proofItemId: string, requestKey: string) =>
      db.note.findFirst({ where: { AND: [{ proofItemId, requestKey }, ofStaff] }, include: withEntries }),

    ofItems: (proofItemIds: readonly string[]) =>
      db.note.findMany({
        where: { AND: [{ proofItemId: { in: [...proofItemIds] }, removedAt: null }, ofStaff] },
        include: withEntries,
        orderBy: { createdAt: 'asc' },
      }),

    ofProofs: (proofIds: readonly string[]) =>
      db.note.findMany({
        where: { AND: [{ proofItem: { proofId: { in: [...proofIds] } }, removedAt: null }, ofStaff] },
        include: withEntries,
        orderBy: { createdAt: 'asc' },
      }),

    /** Which notes these proofs have, at which version and how far their threads go, without what they say. */
    stampsOf: (proofIds: readonly string[]) =>
      db.note.findMany({
        where: { AND: [{ proofItem: { proofId: { in: [...proofIds] } }, removedAt: null }, ofStaff] },
        select: {
          id: true,
          version: true,
          proofItem: { select: { proofId: true } },
          _count: { select: { entries: true } },
        },
        orderBy: { id: 'asc' },
      }),

    /** Notes at these settings of earlier rounds, with the round of each. */
    ofEarlier: (proofItemIds: readonly string[]) =>
      db.note.findMany({
        where: { AND: [{ proofItemId: { in: [...proofItemIds] }, removedAt: null }, ofStaff] },
        include: {
          ...withEntries,
          proofItem: { include: { proof: { select: { number: true, round: { select: { number: true } } } } } },
        },
        orderBy: { createdAt: 'asc' },
      }),

    /** @throws P2002 when the key was used already: the note is there, read it. */
    create: async (note: NewNote): Promise<string> => {
      const { body, now, suggestion, ...pinned } = note;
      const id = newId();
      const writes = [
        db.note.create({
          data: { id, ...pinned, suggestion: suggestion && canonicalJson(suggestion), createdAt: now },
        }),
        db.noteEntry.create({ data: { id: newId(), noteId: id, seq: 1, authorId: note.authorId, body, at: now } }),
      ];
      if ('$connect' in db) await db.$transaction(writes);
      else for (const write of writes) await write;
      return id;
    },

    /** Changes a note that still stands at `version`; says whether it did. */
    change: async (
      id: string,
      version: number,
      to: { suggestion?: number[] | null; settledAt?: Date | null; removedAt?: Date | null },
    ): Promise<boolean> => {
      const { suggestion, ...rest } = to;
      const { count } = await db.note.updateMany({
        where: { AND: [{ id, version }, ofStaff] },
        data: {
          ...rest,
          ...(suggestion === undefined ? {} : { suggestion: suggestion && canonicalJson(suggestion) }),
          version: { increment: 1 },
        },
      });
      return count === 1;
    },

    /** Adds to the thread. @throws P2002 when somebody took this place in it: read again. */
    addEntry: ({ now, ...entry }: Entry) => db.noteEntry.create({ data: { id: newId(), ...entry, at: now } }),

    /** Threads of notes, for staff. */
    threads: (noteIds: readonly string[]) =>
      db.noteEntry.findMany({
        where: { noteId: { in: [...noteIds] }, note: ofStaff },
        include: withEntries.entries.include,
        orderBy: { seq: 'asc' },
      }),

    /**
     * Of a note on one of the actor's own proofs: its thread. Whether it was released is for the operation to check
     * against the release.
     */
    ofSelf: (id: string) =>
      db.note.findFirst({
        where: { id, proofItem: { proof: proofsOfSelf(actor) } },
        select: {
          id: true,
          proofItem: { select: { proof: { select: { id: true, memberId: true } } } },
          entries: { orderBy: { seq: 'asc' }, select: { seq: true, authorId: true, body: true } },
        },
      }),

    /** Answers given in threads of one's own proof. */
    threadsOfSelf: (noteIds: readonly string[]) =>
      db.noteEntry.findMany({
        where: { noteId: { in: [...noteIds] }, note: { proofItem: { proof: proofsOfSelf(actor) } } },
        include: { author: { select: { id: true, role: true, user: { select: { name: true } } } } },
        orderBy: { seq: 'asc' },
      }),
  };
};

/** Notes kept for use again: one's own, and those shared in the course. */
export const stockNoteData = (actor: Actor, db: Db) => {
  const inCourse: Prisma.StockNoteWhereInput = { removedAt: null, course: coursesOf(actor, staff) };
  const own: Prisma.StockNoteWhereInput = { author: membersOf(actor, staff) };
  return {
    ofCourse: (courseId: string) =>
      db.stockNote.findMany({
        where: { AND: [{ courseId }, inCourse, { OR: [own, { shared: true }] }] },
        orderBy: { createdAt: 'asc' },
      }),

    create: async (note: {
      courseId: string;
      authorId: string;
      shared: boolean;
      fault: string;
      body: string;
      now: Date;
    }): Promise<string> => {
      const { now, ...rest } = note;
      const id = newId();
      await db.stockNote.create({ data: { id, ...rest, createdAt: now } });
      return id;
    },

    /** Takes one's own out of use. */
    remove: async (id: string, now: Date): Promise<boolean> => {
      const { count } = await db.stockNote.updateMany({
        where: { AND: [{ id }, inCourse, own] },
        data: { removedAt: now, version: { increment: 1 } },
      });
      return count === 1;
    },
  };
};
