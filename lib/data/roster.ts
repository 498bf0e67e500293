import type { Role } from '@/shared/schemas/course';
import type { Actor } from './actor';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { Db } from './client';
import { newId } from './ids';
import { finishJob, retryJob, takeJob, type Job } from './jobs';
import { listNameOf } from './members';
import { coursesOf, self } from './scope';

export type KnownPerson = { name: string; member: { role: string; removed: boolean } | null };
type NewPerson = { emailNorm: string; name: string; tokenHash: string | null };
/**
 * A letter to a new person, as a job: whose it is by id, so that nothing of a person stays in the list when they are
 * erased.
 */
export type Welcome = { userId: string; courseId: string; createdById: string; days: number };
type NewMember = { email: string; role: Role; sectionId: string | null };

const welcome = 'welcome-letter';

/**
 * Many people at once, by the addresses in an instructor's list. Whether a person has an account is revealed only to
 * instructors of the course in question, and only for addresses they bring themselves.
 */
export const rosterData = (actor: Actor, db: Db) => ({
  people: async (courseId: string, emails: readonly string[]): Promise<ReadonlyMap<string, KnownPerson>> => {
    if ((await db.course.count({ where: { AND: [{ id: courseId }, coursesOf(actor)] } })) === 0) return new Map();
    const users = await db.user.findMany({
      where: { emailNorm: { in: [...new Set(emails)] }, erasedAt: null },
      select: {
        name: true,
        emailNorm: true,
        members: { where: { courseId }, select: { role: true, removedAt: true } },
      },
    });
    return new Map(
      users.map(({ emailNorm, name, members: [member] }) => [
        emailNorm,
        { name, member: member ? { role: member.role, removed: member.removedAt !== null } : null },
      ]),
    );
  },

  /** The course must be one that `courses.byId` gave. @throws P2002 when another request made one of them meanwhile. */
  addSections: (courseId: string, names: readonly string[], now: Date) =>
    db.section.createMany({ data: names.map((name) => ({ id: newId(), courseId, name, createdAt: now })) }),

  /**
   * Accounts without a password, each with the hash of a link to set one, if there is one. @throws P2002 when an
   * address was taken meanwhile.
   */
  addPeople: async (
    people: readonly NewPerson[],
    link: { createdById: string; expiresAt: Date },
    now: Date,
  ): Promise<void> => {
    const made = people.map((person) => ({ id: newId(), ...person }));
    await db.user.createMany({
      data: made.map(({ id, emailNorm, name }) => ({ id, emailNorm, name, createdAt: now })),
    });
    await db.oneTimeLink.createMany({
      data: made.flatMap(({ id, tokenHash }) =>
        tokenHash === null
          ? []
          : [{ id: newId(), purpose: 'reset-password', tokenHash, userId: id, ...link, createdAt: now }],
      ),
    });
  },

  /** The course must be one that `courses.byId` gave. @throws P2002 when one of them joined meanwhile. */
  addMembers: async (
    courseId: string,
    members: readonly NewMember[],
    now: Date,
  ): Promise<{ id: string; role: Role; sectionId: string | null }[]> => {
    const users = await db.user.findMany({
      where: { emailNorm: { in: members.map(({ email }) => email) }, erasedAt: null },
      select: { id: true, emailNorm: true, name: true },
    });
    const byEmail = new Map(users.map((user) => [user.emailNorm, user]));
    const rows = members.flatMap(({ email, role, sectionId }) => {
      const user = byEmail.get(email);
      return user
        ? [{ id: newId(), courseId, userId: user.id, role, sectionId, listName: listNameOf(user.name), joinedAt: now }]
        : [];
    });
    await db.member.createMany({ data: rows });
    return rows;
  },

  /** Puts a letter to each of these new people in the list. The course must be one that `courses.byId` gave. */
  planWelcomes: async (emails: readonly string[], of: Omit<Welcome, 'userId'>, now: Date): Promise<void> => {
    const users = await db.user.findMany({
      where: { emailNorm: { in: [...emails] }, passwordHash: null, erasedAt: null },
      select: { id: true },
    });
    await db.job.createMany({
      data: users.map(({ id }) => ({
        id: newId(),
        kind: welcome,
        key: id,
        payload: canonicalJson({ ...of, userId: id }),
        createdAt: now,
        dueAt: now,
      })),
    });
  },

  takeWelcome: (now: Date) => takeJob(db, welcome, 10, now),
  welcomeSent: (job: Job, now: Date) => finishJob(db, job, now),
  welcomeAgain: (job: Job, why: string, at: Date) => retryJob(db, job, why, at),

  /** Who still waits for a letter: in the course, and without a password. */
  awaits: ({ userId, courseId }: Pick<Welcome, 'userId' | 'courseId'>) =>
    db.member.findFirst({
      where: {
        courseId,
        course: coursesOf(actor),
        removedAt: null,
        user: { AND: [{ id: userId, passwordHash: null, erasedAt: null }, self(actor)] },
      },
      select: { course: { select: { title: true } }, user: { select: { name: true, emailNorm: true } } },
    }),
});
