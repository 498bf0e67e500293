import type { Actor } from '@/lib/access/actor';
import type { Role } from '@/lib/access/permissions';
import type { Db } from './client';
import { newId } from './ids';
import { listNameOf } from './list-name';
import { coursesOf, membersOf, self } from './scope';

export type MemberChange = { role?: Role; sectionId?: string | null; accommodations?: string; removedAt?: Date | null };
type NewMember = { courseId: string; userId: string; role: Role; sectionId: string | null };

const shown = {
  id: true, courseId: true, role: true, sectionId: true, accommodations: true, joinedAt: true, removedAt: true, version: true,
  user: { select: { id: true, name: true, emailNorm: true, mayCreateCourses: true, passwordHash: true } },
} as const;

/** People in courses that the actor may look into. */
export const memberData = (actor: Actor, db: Db) => ({
  ofCourse: (courseId: string) =>
    db.member.findMany({ where: { courseId, course: coursesOf(actor), userId: { not: null } }, select: shown }),

  byId: (courseId: string, id: string) =>
    db.member.findFirst({ where: { id, courseId, course: coursesOf(actor), userId: { not: null } }, select: shown }),

  /** The actor's own membership, removed or not: only to say why a link does not let them in again. */
  ownIn: (courseId: string, userId: string) =>
    db.member.findFirst({ where: { courseId, userId, user: self(actor) }, select: { id: true, role: true, removedAt: true } }),

  /** @throws P2002 when the person is in the course already. */
  add: async (member: NewMember, now: Date) => {
    const person = await db.user.findFirst({ where: { id: member.userId }, select: { name: true } });
    return db.member.create({ data: { id: newId(), ...member, listName: listNameOf(person?.name ?? ''), joinedAt: now }, select: { id: true } });
  },

  /** Count 1 when the member still had this version. */
  change: (id: string, version: number, change: MemberChange) =>
    db.member.updateMany({ where: { id, version, course: coursesOf(actor) }, data: { ...change, version: version + 1 } }),

  /** How many people teach the course now. */
  instructors: (courseId: string) =>
    db.member.count({ where: { courseId, course: coursesOf(actor), role: 'instructor', removedAt: null, userId: { not: null } } }),

  /** Whether a person teaches anywhere, in courses of the actor or not: such people's passwords nobody else may reset. */
  teachesSomewhere: async (userId: string): Promise<boolean> =>
    (await db.member.count({ where: { userId, role: 'instructor', removedAt: null } })) > 0,

  /** Whether the person behind a member may open courses. */
  setCourseMaking: (courseId: string, id: string, allowed: boolean) =>
    db.user.updateMany({ where: { erasedAt: null, members: { some: { id, courseId, course: coursesOf(actor) } } }, data: { mayCreateCourses: allowed } }),

  /** The actor's own memberships as an instructor, for what must be handed over before leaving. */
  ownTeaching: () =>
    db.member.findMany({
      where: { AND: [membersOf(actor), { role: 'instructor' }] },
      select: { id: true, courseId: true, course: { select: { title: true, version: true } } },
    }),
});

export type MemberRow = NonNullable<Awaited<ReturnType<ReturnType<typeof memberData>['byId']>>>;
