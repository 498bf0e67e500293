import type { Role } from '@/shared/schemas/course';
import type { Actor } from './actor';
import type { Db } from './client';
import { newId } from './ids';
import { addJob, finishJob, retryJob, type Job, takeJob } from './jobs';
import { isTaken } from './retry';
import { coursesOf, instructorRoles, membersOf, studentRoles } from './scope';

type Settled = { title: string; timeZone: string; retainUntil: string | null };

/** Courses the actor is a member of, in one of the running operation's roles. */
export const courseData = (actor: Actor, db: Db) => ({
  own: () =>
    db.course.findMany({
      where: coursesOf(actor),
      select: {
        id: true,
        title: true,
        timeZone: true,
        state: true,
        createdAt: true,
        members: { where: membersOf(actor), select: { id: true, role: true, section: { select: { name: true } } } },
      },
    }),

  byId: (id: string) =>
    db.course.findFirst({
      where: { AND: [{ id }, coursesOf(actor)] },
      select: {
        id: true,
        title: true,
        timeZone: true,
        state: true,
        settings: true,
        retainUntil: true,
        version: true,
        createdAt: true,
        members: { where: membersOf(actor), select: { id: true, role: true, sectionId: true } },
        sections: { select: { id: true, name: true, createdAt: true } },
      },
    }),

  /** Settings of the course that a proof within the actor's reach belongs to. */
  settingsOfProof: (proofId: string) =>
    db.course.findFirst({
      where: {
        AND: [coursesOf(actor), { exercises: { some: { rounds: { some: { proofs: { some: { id: proofId } } } } } } }],
      },
      select: { settings: true },
    }),

  make: (course: Settled, now: Date) =>
    db.course.create({ data: { id: newId(), ...course, state: 'active', createdAt: now }, select: { id: true } }),

  /** Count 1 when the course still had this version. */
  change: (
    id: string,
    version: number,
    change: Partial<Settled> & { settings?: string; state?: string; archivedAt?: Date | null },
  ) =>
    db.course.updateMany({
      where: { AND: [{ id, version }, coursesOf(actor)] },
      data: { ...change, version: version + 1 },
    }),

  /** A change of a course's instructors takes the course's next version, so that two such changes can't both pass. */
  takeVersion: (id: string, version: number) =>
    db.course.updateMany({ where: { AND: [{ id, version }, coursesOf(actor)] }, data: { version: version + 1 } }),
});

type NewJoinLink = {
  courseId: string;
  tokenHash: string;
  role: Role;
  sectionId: string | null;
  createdById: string;
  expiresAt: Date;
};

/** Links for joining a course. Only the hash of each is stored: a link is shown once, when it is made. */
export const joinLinkData = (actor: Actor, db: Db) => ({
  /** The scope is the secret itself: its holder may see which course it leads to. */
  byToken: (tokenHash: string, now: Date) =>
    db.joinLink.findFirst({
      where: { tokenHash, revokedAt: null, expiresAt: { gt: now }, course: { state: 'active' } },
      select: {
        id: true,
        courseId: true,
        role: true,
        sectionId: true,
        expiresAt: true,
        course: { select: { title: true, timeZone: true } },
        section: { select: { name: true } },
      },
    }),

  ofCourse: (courseId: string, now: Date) =>
    db.joinLink.findMany({
      where: { courseId, course: coursesOf(actor), revokedAt: null, expiresAt: { gt: now } },
      select: {
        id: true,
        role: true,
        createdAt: true,
        expiresAt: true,
        section: { select: { name: true } },
        createdBy: { select: { name: true } },
      },
    }),

  /** The course must be one that `courses.byId` gave. */
  make: (link: NewJoinLink, now: Date) =>
    db.joinLink.create({ data: { id: newId(), ...link, createdAt: now }, select: { id: true } }),

  revoke: (courseId: string, id: string, now: Date) =>
    db.joinLink.updateMany({
      where: { id, courseId, course: coursesOf(actor), revokedAt: null },
      data: { revokedAt: now },
    }),
});

/** Stored under this name since before the page was called retention. */
const kind = 'keeping-notice';

/** Courses with a last day of retention, and their notices. */
export const retentionData = (actor: Actor, db: Db) => ({
  dated: () =>
    db.course.findMany({
      where: { AND: [{ retainUntil: { not: null } }, coursesOf(actor)] },
      select: { id: true, title: true, timeZone: true, retainUntil: true },
    }),

  /** Who teaches a course now. */
  instructors: (courseId: string) =>
    db.member.findMany({
      where: {
        courseId,
        course: coursesOf(actor),
        role: { in: [...instructorRoles] },
        removedAt: null,
        user: { erasedAt: null },
      },
      select: { user: { select: { name: true, emailNorm: true } } },
    }),

  /** Students of whom the course still knows who they are, removed or not. */
  countStudents: (courseId: string) =>
    db.member.count({
      where: { courseId, course: coursesOf(actor), role: { in: [...studentRoles] }, userId: { not: null } },
    }),

  /** Puts a notice in the list, once for a key. Two processes that do it at once make one. */
  plan: async (key: string, payload: object, now: Date): Promise<void> => {
    try {
      await addJob(db, { kind, key, payload, dueAt: now }, now);
    } catch (error) {
      if (!isTaken(error)) throw error;
    }
  },

  take: (now: Date) => takeJob(db, kind, 10, now),
  done: (job: Job, now: Date) => finishJob(db, job, now),
  again: (job: Job, why: string, at: Date) => retryJob(db, job, why, at),
});
