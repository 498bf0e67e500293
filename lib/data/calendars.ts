import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import { teaches } from '@/shared/schemas/course';
import type { Actor } from './actor';
import type { Db } from './client';
import { newId } from './ids';
import { self } from './scope';

/** The address of a person's calendar, and what it leads to. */
export const calendarData = (actor: Actor, db: Db) => ({
  own: () => db.calendarFeed.findFirst({ where: { user: self(actor) }, select: { createdAt: true } }),

  /** Puts an address in the place of the one before. @throws P2002 when another request made one: retry from outside. */
  make: async (userId: string, tokenHash: string, now: Date): Promise<void> => {
    const { count } = await db.calendarFeed.updateMany({
      where: { user: { AND: [self(actor), { id: userId }] } },
      data: { tokenHash, createdAt: now },
    });
    if (count === 0) await db.calendarFeed.create({ data: { id: newId(), userId, tokenHash, createdAt: now } });
  },

  revoke: async (): Promise<boolean> =>
    (await db.calendarFeed.deleteMany({ where: { user: self(actor) } })).count === 1,

  /**
   * The memberships of the person whose address this is, with the exercises and rounds they may know of. The scope is
   * the address itself: it leads to this person's dates and to nothing else. Null when there is none (any more).
   */
  byAddress: async (tokenHash: string) => {
    const feed = await db.calendarFeed.findFirst({
      where: { tokenHash, user: { erasedAt: null } },
      select: { userId: true },
    });
    if (!feed) return null;
    const members = await db.member.findMany({
      where: { userId: feed.userId, removedAt: null, course: { state: { not: 'archived' } } },
      orderBy: { id: 'asc' },
      select: {
        id: true,
        role: true,
        sectionId: true,
        accommodations: true,
        extensions: { select: { roundId: true, dueAt: true } },
        course: { select: { id: true, title: true } },
      },
    });
    return Promise.all(
      members.map(async ({ course, ...member }) => ({
        member,
        course,
        exercises: await db.exercise.findMany({
          where: { courseId: course.id, removedAt: null, state: { in: ['published', 'closed'] } },
          orderBy: [{ position: 'asc' }, { createdAt: 'asc' }],
          select: {
            id: true,
            title: true,
            createdAt: true,
            publishedAt: true,
            rounds: {
              orderBy: { number: 'asc' },
              include: { sections: { where: sectionsFor(member), include: { section: { select: { name: true } } } } },
            },
          },
        }),
      })),
    );
  },
});

/** A student's own section; all of them for those who teach. */
const sectionsFor = ({ role, sectionId }: { role: string; sectionId: string | null }): Prisma.RoundSectionWhereInput =>
  teaches(role) ? {} : { sectionId: sectionId ?? '' };
