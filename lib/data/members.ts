import { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { Role } from '@/shared/schemas/course';
import type { Actor } from './actor';
import type { Db } from './client';
import { newId } from './ids';
import { coursesOf, instructorRoles, membersOf, self, staff, studentRoles } from './scope';

export type MemberChange = { role?: Role; sectionId?: string | null; accommodations?: string; removedAt?: Date | null };
type NewMember = { courseId: string; userId: string; role: Role; sectionId: string | null };

const shown = {
  id: true,
  courseId: true,
  role: true,
  sectionId: true,
  accommodations: true,
  joinedAt: true,
  removedAt: true,
  version: true,
  user: { select: { id: true, name: true, emailNorm: true, mayCreateCourses: true, passwordHash: true } },
} as const;

/** People in courses that the actor may look into. */
export const memberData = (actor: Actor, db: Db) => {
  const studentsIn = (courseId: string): Prisma.MemberWhereInput => ({
    courseId,
    role: { in: [...studentRoles] },
    removedAt: null,
    course: coursesOf(actor),
  });
  const gone = (courseId: string): Prisma.MemberWhereInput => ({
    courseId,
    removedAt: { not: null },
    userId: { not: null },
    course: coursesOf(actor),
  });

  /** Counted in an index alone, with the actor's own scope asked once and not for each row, as Prisma's count would. */
  async function counted(courseId: string): Promise<number> {
    if (actor.kind !== 'person' || actor.roles.length === 0) return 0;
    const [row] = await db.$queryRaw<{ students: unknown }[]>`
      SELECT COUNT(*) AS "students" FROM "Member" s WHERE s."courseId" = ${courseId} AND s."role" = 'student' AND s."removedAt" IS NULL
        AND EXISTS (SELECT 1 FROM "Member" m WHERE m."courseId" = ${courseId} AND m."userId" = ${actor.userId} AND m."removedAt" IS NULL AND m."role" IN (${Prisma.join([...actor.roles])}))`;
    return Number(row?.students ?? 0);
  }

  return {
    /** Who teaches the course now. */
    staffOf: (courseId: string) =>
      db.member.findMany({
        where: { courseId, course: coursesOf(actor), role: { in: [...staff] }, removedAt: null, userId: { not: null } },
        select: shown,
      }),

    /** A page of the students that are in the course now, by name. */
    studentsOf: (courseId: string, { find, skip, take }: { find: string; skip: number; take: number }) =>
      db.member.findMany({
        where: { AND: [studentsIn(courseId), found(find)] },
        orderBy: [{ listName: 'asc' }, { id: 'asc' }],
        skip,
        take,
        select: shown,
      }),

    /** How many students there are, and of how many the name holds what is looked for. */
    countStudents: async (courseId: string, find: string): Promise<{ all: number; found: number }> => {
      const all = await counted(courseId);
      return {
        all,
        found: find === '' ? all : await db.member.count({ where: { AND: [studentsIn(courseId), found(find)] } }),
      };
    },

    /** Those who were removed, the last first. */
    removedFrom: (courseId: string, take: number) =>
      db.member.findMany({
        where: gone(courseId),
        orderBy: [{ removedAt: 'desc' }, { id: 'desc' }],
        take,
        select: shown,
      }),

    countRemoved: (courseId: string) => db.member.count({ where: gone(courseId) }),

    /** What these members are called, by member id. */
    names: async (courseId: string, ids: readonly string[]): Promise<ReadonlyMap<string, string>> => {
      const members = await db.member.findMany({
        where: { id: { in: [...ids] }, courseId, course: coursesOf(actor), userId: { not: null } },
        select: { id: true, user: { select: { name: true } } },
      });
      return new Map(members.flatMap(({ id, user }) => (user ? [[id, user.name] as const] : [])));
    },

    byId: (courseId: string, id: string) =>
      db.member.findFirst({ where: { id, courseId, course: coursesOf(actor), userId: { not: null } }, select: shown }),

    /** The actor's own membership, removed or not: only to say why a link does not let them in again. */
    ownIn: (courseId: string, userId: string) =>
      db.member.findFirst({
        where: { courseId, userId, user: self(actor) },
        select: { id: true, role: true, removedAt: true },
      }),

    /** @throws P2002 when the person is in the course already. */
    add: async (member: NewMember, now: Date) => {
      const person = await db.user.findFirst({ where: { id: member.userId }, select: { name: true } });
      return db.member.create({
        data: { id: newId(), ...member, listName: listNameOf(person?.name ?? ''), joinedAt: now },
        select: { id: true },
      });
    },

    /** Count 1 when the member still had this version. */
    change: (id: string, version: number, change: MemberChange) =>
      db.member.updateMany({
        where: { id, version, course: coursesOf(actor) },
        data: { ...change, version: version + 1 },
      }),

    /** How many people teach the course now. */
    instructors: (courseId: string) =>
      db.member.count({
        where: {
          courseId,
          course: coursesOf(actor),
          role: { in: [...instructorRoles] },
          removedAt: null,
          userId: { not: null },
        },
      }),

    /**
     * Whether a person is an instructor anywhere, in courses of the actor or not: only they may reset their own
     * password.
     */
    teachesSomewhere: async (userId: string): Promise<boolean> =>
      (await db.member.count({ where: { userId, role: { in: [...instructorRoles] }, removedAt: null } })) > 0,

    /**
     * A person's part in every course they are or were in, the actor's or not: where acts on the person are written
     * down.
     */
    everywhere: (userId: string): Promise<{ id: string; courseId: string }[]> =>
      db.member.findMany({ where: { userId }, select: { id: true, courseId: true } }),

    /** Whether a person is or was in a course that the actor does not run. */
    isElsewhere: async (userId: string): Promise<boolean> =>
      (await db.member.count({ where: { userId, NOT: { course: coursesOf(actor, instructorRoles) } } })) > 0,

    /** Whether the person behind a member may open courses. */
    setCourseMaking: (courseId: string, id: string, allowed: boolean) =>
      db.user.updateMany({
        where: { erasedAt: null, members: { some: { id, courseId, course: coursesOf(actor) } } },
        data: { mayCreateCourses: allowed },
      }),

    /** The actor's own memberships as an instructor, for what another instructor must take over before they leave. */
    ownTeaching: () =>
      db.member.findMany({
        where: { AND: [membersOf(actor), { role: { in: [...instructorRoles] } }] },
        select: { id: true, courseId: true, course: { select: { title: true, version: true } } },
      }),
  };
};

/**
 * Names that hold these letters, accents and capitals aside; with an @, addresses that begin so. `%` and `_` are
 * letters here and nothing more.
 */
function found(find: string): Prisma.MemberWhereInput {
  if (find === '') return {};
  const letters = find.replace(/[%_\\]/g, '');
  return letters.includes('@')
    ? { user: { emailNorm: { startsWith: letters.normalize('NFC').toLowerCase() } } }
    : { listName: { contains: listNameOf(letters) } };
}

export type MemberRow = NonNullable<Awaited<ReturnType<ReturnType<typeof memberData>['byId']>>>;

/** Parts of a course. Deleting one leaves its members in the course, in no section. */
export const sectionData = (actor: Actor, db: Db) => ({
  byId: (courseId: string, id: string) =>
    db.section.findFirst({ where: { id, courseId, course: coursesOf(actor) }, select: { id: true, name: true } }),

  /** Members of a section who are still in the course. */
  memberIds: async (courseId: string, id: string): Promise<string[]> =>
    (
      await db.member.findMany({
        where: { courseId, sectionId: id, removedAt: null, course: coursesOf(actor, staff) },
        select: { id: true },
      })
    ).map((member) => member.id),

  /** How many members of each section have sent something in a round; those in no section under null. For staff. */
  sentIn: async (
    courseId: string,
    roundId: string,
  ): Promise<{ id: string | null; name: string | null; sent: number }[]> => {
    // Most courses have no sections, and then nothing is counted.
    const sections = await db.section.findMany({
      where: { courseId, course: coursesOf(actor, staff) },
      select: { id: true, name: true },
    });
    if (sections.length === 0) return [];
    const counts = await db.member.groupBy({
      by: ['sectionId'],
      where: { courseId, removedAt: null, course: coursesOf(actor, staff), proofs: { some: { roundId } } },
      _count: true,
    });
    const names = new Map(sections.map(({ id, name }) => [id, name]));
    return counts.map(({ sectionId, _count: sent }) => ({
      id: sectionId,
      name: sectionId === null ? null : (names.get(sectionId) ?? null),
      sent,
    }));
  },

  /** The course must be one that `courses.byId` gave. @throws P2002 when the course has a section of this name. */
  add: (courseId: string, name: string, now: Date) =>
    db.section.create({ data: { id: newId(), courseId, name, createdAt: now }, select: { id: true } }),

  /** @throws P2002 when the course has another section of this name. */
  rename: (courseId: string, id: string, name: string) =>
    db.section.updateMany({ where: { id, courseId, course: coursesOf(actor) }, data: { name } }),

  remove: (courseId: string, id: string) =>
    db.section.deleteMany({ where: { id, courseId, course: coursesOf(actor) } }),
});

/**
 * A name for ordering and search: lower case, no accents, one space between words. “Łucja Ångström” becomes “łucja
 * angstrom”: only accents that Unicode decomposes (NFKD) are dropped. Stored in Member.listName, since the two
 * databases order and search letters differently, and since a list of thousands is read a page at a time in this order.
 */
export const listNameOf = (name: string): string =>
  name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replace(/\s+/gu, ' ').trim();
