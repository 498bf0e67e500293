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

type LineOfProof = { specimenVersionId: string; proof: { roundId: string; memberId: string } };

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
  /** Moving a note is part of sending a proof as well as of marking. */
  const proofsOfCourse: Prisma.ProofWhereInput = { OR: [proofsOfStaff(actor), proofsOfSelf(actor)] };
  const ofCourse: Prisma.NoteWhereInput = { proofItem: { proof: proofsOfCourse } };
  return {
    /** The line of a proof that a note is written at. */
    item: (token: string, specimenVersionId: string) =>
      db.proofItem.findFirst({
        where: { specimenVersionId, proof: { AND: [named(token), proofsOfStaff(actor)] } },
        select: {
          id: true,
          specimenVersionId: true,
          tracking: true,
          offsets: true,
          proofId: true,
          proof: { select: { roundId: true, memberId: true } },
        },
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

    /** The note that was made with this key, on this line or, where it went along, on another proof of the round. */
    byKey: ({ specimenVersionId, proof: { roundId, memberId } }: LineOfProof, requestKey: string) =>
      db.note.findFirst({
        where: {
          AND: [{ requestKey, proofItem: { specimenVersionId, proof: { roundId, memberId } } }, ofStaff],
        },
        include: withEntries,
      }),

    /** Notes on the other proofs that a member sent in a round: those that may go along to this one. */
    onOtherProofs: ({ roundId, memberId, proofId }: { roundId: string; memberId: string; proofId: string }) =>
      db.note.findMany({
        where: {
          AND: [
            {
              removedAt: null,
              proofItem: { proof: { roundId, memberId, id: { not: proofId }, releases: { none: {} } } },
            },
            ofCourse,
          ],
        },
        select: {
          id: true,
          fromPair: true,
          toPair: true,
          task: { select: { slot: true } },
          proofItem: { select: { specimenVersionId: true, tracking: true, offsets: true } },
        },
      }),

    /** The lines of a proof, to hold notes against. */
    itemsOf: (proofId: string) =>
      db.proofItem.findMany({
        where: { proof: { AND: [{ id: proofId }, proofsOfCourse] } },
        select: { id: true, specimenVersionId: true, tracking: true, offsets: true },
      }),

    /** Pins a note to the same place of another proof, unless its own proof was singled out or released meanwhile. */
    moveTo: (id: string, proofItemId: string, { keepTask }: { keepTask: boolean }) =>
      db.note.updateMany({
        where: {
          AND: [
            { id, removedAt: null, proofItem: { proof: { releases: { none: {} }, choices: { none: {} } } } },
            ofCourse,
          ],
        },
        data: { proofItemId, version: { increment: 1 }, ...(keepTask ? {} : { taskId: null }) },
      }),

    /** How many notes stay on the other proofs that a member sent in a round, and who wrote them. */
    leftOn: (roundId: string, memberId: string, proofId: string) =>
      db.note.findMany({
        where: {
          AND: [{ removedAt: null, proofItem: { proof: { roundId, memberId, id: { not: proofId } } } }, ofStaff],
        },
        select: { authorId: true, proofItem: { select: { proofId: true } } },
      }),

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

    /** Changes a note that is still at `version`; returns whether it did. */
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

    /** Adds to the thread. @throws P2002 when another entry took this place in it: read again. */
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

/** Notes kept for reuse: one's own, and those shared in the course. */
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
