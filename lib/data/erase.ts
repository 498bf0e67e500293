import type { Actor } from '@/lib/access/actor';
import type { Db } from './client';
import { self } from './scope';

/**
 * Erasing the actor's own person: everything that names them or was written by or about them goes; spacings, marks and
 * memberships stay without a name. The only place where rows that are never updated lose their free text.
 */
export const eraseData = (actor: Actor, db: Db) => ({
  /** Courses in which nobody else teaches: they must be handed over first. */
  teaching: () =>
    db.course.findMany({
      where: { members: { some: { user: self(actor), role: 'instructor', removedAt: null } } },
      select: {
        id: true, title: true, version: true,
        _count: { select: { members: { where: { role: 'instructor', removedAt: null, userId: { not: null } } } } },
      },
    }),

  takeCourseVersion: (id: string, version: number) =>
    db.course.updateMany({ where: { id, version, members: { some: { user: self(actor) } } }, data: { version: version + 1 } }),

  /** What the person wrote, and what others wrote about their proofs. */
  clearWords: async (): Promise<void> => {
    const ownProof = { member: { user: self(actor) } };
    await db.proof.updateMany({ where: ownProof, data: { reasoning: '' } });
    await db.noteEntry.updateMany({ where: { note: { proofItem: { proof: ownProof } } }, data: { body: '' } });
    await db.markEvent.updateMany({ where: { mark: { task: { proof: ownProof } } }, data: { why: '' } });
    await db.stockNote.updateMany({ where: { author: { user: self(actor) }, shared: false }, data: { body: '' } });
    // Where a room pointed is said about their work too, though it names nobody.
    await db.wallPoint.deleteMany({ where: { proofItem: { proof: ownProof } } });
    for (const { id, steps } of await db.demonstration.findMany({ where: { author: { user: self(actor) }, shownAt: null }, select: { id: true, steps: true } })) {
      await db.demonstration.update({ where: { id, author: { user: self(actor) } }, data: { title: '', steps: withoutReasons(steps) } });
    }
    for (const { id, snapshot } of await db.release.findMany({ where: { member: { user: self(actor) } }, select: { id: true, snapshot: true } })) {
      await db.release.update({ where: { id, member: { user: self(actor) } }, data: { snapshot: withoutWords(snapshot) } });
    }
  },

  /** Leaves all courses: the memberships stay as pseudonyms, without needs and without a person. */
  leaveCourses: async (now: Date): Promise<void> => {
    await db.wall.updateMany({ where: { openedBy: { user: self(actor) } }, data: { openedById: null } });
    await db.member.updateMany({ where: { user: self(actor), removedAt: null }, data: { removedAt: now } });
    await db.member.updateMany({ where: { user: self(actor) }, data: { accommodations: '{}', listName: '', userId: null, sectionId: null } });
  },

  clearPerson: async (userId: string, now: Date): Promise<void> => {
    await db.practiceResult.deleteMany({ where: { user: self(actor) } });
    await db.identity.deleteMany({ where: { user: self(actor) } });
    await db.authSession.deleteMany({ where: { user: self(actor) } });
    await db.oneTimeLink.deleteMany({ where: { user: self(actor) } });
    await db.joinLink.updateMany({ where: { createdBy: self(actor) }, data: { createdById: null } });
    await db.user.updateMany({
      where: { AND: [{ id: userId }, self(actor)] },
      data: { emailNorm: `erased:${userId}`, name: '', passwordHash: null, mayCreateCourses: false, preferences: '{}', erasedAt: now },
    });
  },
});

/** What was recorded and never shown, without a word; what was shown to a course is its teaching material and stays. */
function withoutReasons(steps: string): string {
  return JSON.stringify(JSON.parse(steps, (key, value: unknown) => (key === 'reason' ? '' : value)));
}

/** A release without what was written in its notes; everything else stays as it went out. */
function withoutWords(snapshot: string): string {
  return JSON.stringify(JSON.parse(snapshot, (key, value: unknown) => (key === 'body' && typeof value === 'string' ? '' : value)));
}
