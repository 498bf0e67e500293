import type { Actor } from '@/lib/access/actor';
import type { Db } from './client';
import { addJob, finishJob, giveJobBack, takeJob, type Job } from './jobs';
import { isTaken } from './retry';
import { coursesOf } from './scope';

const kind = 'keeping-notice';

/** Courses with a day until which work is kept, and the notices before it. */
export const keepingData = (actor: Actor, db: Db) => ({
  dated: () =>
    db.course.findMany({
      where: { AND: [{ retainUntil: { not: null } }, coursesOf(actor)] },
      select: { id: true, title: true, timeZone: true, retainUntil: true },
    }),

  /** Who teaches a course now. */
  teachers: (courseId: string) =>
    db.member.findMany({ where: { courseId, course: coursesOf(actor), role: 'instructor', removedAt: null, user: { erasedAt: null } }, select: { user: { select: { name: true, emailNorm: true } } } }),

  /** Students of whom the course still knows who they are, removed or not. */
  countStudents: (courseId: string) => db.member.count({ where: { courseId, course: coursesOf(actor), role: 'student', userId: { not: null } } }),

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
  again: (job: Job, why: string, at: Date) => giveJobBack(db, job, why, at),
});
