import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { Actor } from './actor';
import type { Db } from './client';
import { coursesOf, instructorRoles, self, studentRoles } from './scope';

/**
 * Everything stored about the actor's own person that they may see: what they made themselves, and what was released to
 * them. Never notes or marks that are not released.
 */
export const ownRecordData = (actor: Actor, db: Db) => ({
  person: () =>
    db.user.findFirst({
      where: self(actor),
      select: {
        name: true,
        emailNorm: true,
        createdAt: true,
        preferences: true,
        mayCreateCourses: true,
        identities: { select: { issuer: true, subject: true, createdAt: true } },
        sessions: { select: { createdAt: true, lastSeenAt: true, expiresAt: true, revokedAt: true } },
        calendarFeed: { select: { createdAt: true } },
        links: { select: { purpose: true, createdAt: true, expiresAt: true, usedAt: true } },
        linksHandedBy: { select: { purpose: true, createdAt: true } },
        joinLinksMade: {
          select: { role: true, createdAt: true, expiresAt: true, course: { select: { title: true } } },
        },
        facesOffered: {
          select: {
            licenceNote: true,
            createdAt: true,
            course: { select: { title: true } },
            face: { select: { family: true, style: true } },
          },
        },
        acts: { orderBy: { at: 'asc' }, select: { verb: true, at: true, course: { select: { title: true } } } },
      },
    }),

  memberships: () =>
    db.member.findMany({
      where: { user: self(actor) },
      select: {
        role: true,
        joinedAt: true,
        removedAt: true,
        accommodations: true,
        course: { select: { title: true } },
        section: { select: { name: true } },
        extensions: {
          select: {
            dueLocal: true,
            dueAt: true,
            createdAt: true,
            round: { select: { number: true, exercise: { select: { title: true } } } },
          },
        },
        choices: {
          select: {
            chosenAt: true,
            proof: { select: { number: true } },
            round: { select: { number: true, exercise: { select: { title: true } } } },
          },
        },
      },
    }),

  drafts: () =>
    db.draft.findMany({
      where: { member: { user: self(actor) } },
      select: {
        purpose: true,
        tracking: true,
        offsets: true,
        updatedAt: true,
        specimenVersion: { select: { text: true } },
        changes: { orderBy: { receivedAt: 'asc' }, select: { tracking: true, offsets: true, receivedAt: true } },
      },
    }),

  proofs: () =>
    db.proof.findMany({
      where: { member: { user: self(actor) } },
      select: {
        number: true,
        reasoning: true,
        receivedAt: true,
        round: { select: { number: true, exercise: { select: { title: true } } } },
        items: { select: { tracking: true, offsets: true, specimenVersion: { select: { text: true } } } },
      },
    }),

  releases: () =>
    db.release.findMany({
      where: { member: { user: self(actor) } },
      select: {
        number: true,
        releasedAt: true,
        snapshot: true,
        round: {
          select: { number: true, exercise: { select: { title: true, course: { select: { settings: true } } } } },
        },
      },
    }),

  /** What they wrote in notes: as a student under released notes, as a marker in their own. */
  words: () => db.noteEntry.findMany({ where: { author: { user: self(actor) } }, select: { body: true, at: true } }),

  /** What they made as those who teach do. Students' work that it is about is not theirs, so it is not in it. */
  taught: () => {
    const line = { specimenVersion: { select: { text: true } } };
    const round = { round: { select: { number: true, exercise: { select: { title: true } } } } };
    return db.member.findMany({
      where: { user: self(actor) },
      select: {
        course: { select: { title: true } },
        references: {
          select: {
            ...line,
            slot: true,
            tracking: true,
            offsets: true,
            tolerances: true,
            reasons: true,
            updatedAt: true,
          },
        },
        referenceSets: { select: { number: true, createdAt: true, exercise: { select: { title: true } } } },
        referenceSetItems: {
          select: {
            ...line,
            tracking: true,
            offsets: true,
            tolerances: true,
            reasons: true,
            set: { select: { number: true } },
          },
        },
        stockNotes: { select: { shared: true, fault: true, body: true, createdAt: true, removedAt: true } },
        notes: {
          select: {
            fromPair: true,
            toPair: true,
            suggestion: true,
            createdAt: true,
            settledAt: true,
            removedAt: true,
            proofItem: { select: line },
          },
        },
        markTasks: { select: { slot: true, state: true, doneAt: true, createdAt: true, proof: { select: round } } },
        markSkips: { select: { at: true, proof: { select: round } } },
        markEvents: {
          select: {
            why: true,
            before: true,
            after: true,
            at: true,
            mark: { select: { criterionVersion: { select: { title: true } } } },
          },
        },
        choicesMade: { select: { ...round, chosenAt: true } },
        releasesMade: { select: { ...round, number: true, releasedAt: true } },
        walls: { select: { ...round, openedAt: true, closedAt: true } },
      },
    });
  },
});

/**
 * Erasing the actor's own person: everything that names them or was written by or about them goes; spacings, marks and
 * memberships stay without a name. The only place where rows that are never updated lose their free text.
 */
export const eraseData = (actor: Actor, db: Db) => ({
  /** Courses without another instructor: they need one first. */
  teaching: () =>
    db.course.findMany({
      where: { members: { some: { user: self(actor), role: { in: [...instructorRoles] }, removedAt: null } } },
      select: {
        id: true,
        title: true,
        version: true,
        _count: {
          select: {
            members: { where: { role: { in: [...instructorRoles] }, removedAt: null, userId: { not: null } } },
          },
        },
      },
    }),

  takeCourseVersion: (id: string, version: number) =>
    db.course.updateMany({
      where: { id, version, members: { some: { user: self(actor) } } },
      data: { version: version + 1 },
    }),

  /** What the person wrote, and what others wrote about their proofs. */
  clearWords: async (): Promise<void> => {
    await clearWordsOf(db, { user: self(actor) });
    await db.stockNote.updateMany({ where: { author: { user: self(actor) }, shared: false }, data: { body: '' } });
    for (const { id, steps } of await db.demonstration.findMany({
      where: { author: { user: self(actor) }, shownAt: null },
      select: { id: true, steps: true },
    })) {
      await db.demonstration.update({
        where: { id, author: { user: self(actor) } },
        data: { title: '', steps: withoutReasons(steps) },
      });
    }
  },

  /**
   * The same for all students of a course that the actor runs, who leave it as pseudonyms; their accounts stay. Who
   * joined is taken out of the log, or it would still say whose membership is whose. Gives how many there were.
   */
  studentsOf: async (courseId: string, now: Date): Promise<number> => {
    const students: Prisma.MemberWhereInput = {
      courseId,
      course: coursesOf(actor),
      role: { in: [...studentRoles] },
      userId: { not: null },
    };
    const members = await db.member.findMany({ where: students, select: { id: true, userId: true } });
    await clearWordsOf(db, students);
    await db.auditEvent.updateMany({
      where: { courseId, actor: { members: { some: students } } },
      data: { actorId: null },
    });
    await db.externalRef.deleteMany({ where: { localId: { in: members.map(({ id }) => id) } } });
    await db.member.updateMany({ where: { ...students, removedAt: null }, data: { removedAt: now } });
    await db.member.updateMany({
      where: students,
      data: { accommodations: '{}', listName: '', userId: null, sectionId: null, version: { increment: 1 } },
    });
    return members.length;
  },

  /** Leaves all courses: the memberships stay as pseudonyms, without needs and without a person. */
  leaveCourses: async (now: Date): Promise<void> => {
    await db.wall.updateMany({ where: { openedBy: { user: self(actor) } }, data: { openedById: null } });
    await db.member.updateMany({ where: { user: self(actor), removedAt: null }, data: { removedAt: now } });
    await db.member.updateMany({
      where: { user: self(actor) },
      data: { accommodations: '{}', listName: '', userId: null, sectionId: null },
    });
  },

  clearPerson: async (userId: string, now: Date): Promise<void> => {
    await db.practiceResult.deleteMany({ where: { user: self(actor) } });
    await db.identity.deleteMany({ where: { user: self(actor) } });
    await db.authSession.deleteMany({ where: { user: self(actor) } });
    await db.calendarFeed.deleteMany({ where: { user: self(actor) } });
    await db.oneTimeLink.deleteMany({ where: { user: self(actor) } });
    await db.joinLink.updateMany({ where: { createdBy: self(actor) }, data: { createdById: null } });
    await db.user.updateMany({
      where: { AND: [{ id: userId }, self(actor)] },
      data: {
        emailNorm: `erased:${userId}`,
        name: '',
        passwordHash: null,
        mayCreateCourses: false,
        preferences: '{}',
        erasedAt: now,
      },
    });
  },
});

/** What was recorded and never shown, without a word; what was shown to a course is its teaching material and stays. */
function withoutReasons(steps: string): string {
  return JSON.stringify(JSON.parse(steps, (key, value: unknown) => (key === 'reason' ? '' : value)));
}

/** Empties what members wrote in their proofs, and what was written about those. */
async function clearWordsOf(db: Db, member: Prisma.MemberWhereInput): Promise<void> {
  const theirs = { member };
  await db.proof.updateMany({ where: theirs, data: { reasoning: '' } });
  await db.noteEntry.updateMany({ where: { note: { proofItem: { proof: theirs } } }, data: { body: '' } });
  await db.markEvent.updateMany({ where: { mark: { task: { proof: theirs } } }, data: { why: '' } });
  // Where a room pointed is also about their work, though it names no one.
  await db.wallPoint.deleteMany({ where: { proofItem: { proof: theirs } } });
  for (const { id, snapshot } of await db.release.findMany({ where: theirs, select: { id: true, snapshot: true } })) {
    await db.release.updateMany({ where: { id, ...theirs }, data: { snapshot: withoutWords(snapshot) } });
  }
}

/** A release without what was written in its notes; everything else stays as it went out. */
function withoutWords(snapshot: string): string {
  return JSON.stringify(
    JSON.parse(snapshot, (key, value: unknown) => (key === 'body' && typeof value === 'string' ? '' : value)),
  );
}
