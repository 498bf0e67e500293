import * as z from 'zod';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { hashToken, newToken } from '@/lib/account/token';
import { joinLinkDaysSchema, roleSchema } from '@/shared/schemas/course';
import { courseId, sectionId } from './ids';

/** A link that lets a teacher in can do much harm in wrong hands, so it does not last as long as a student's. */
const longestForStaff = 14;

/** Makes a link by which people join with one role. It can be read only now: the database keeps its hash. */
export const makeJoinLink = operation({
  name: 'make-join-link',
  allow: 'member:manage',
  input: z.object({ courseId, role: roleSchema, sectionId: z.nullable(sectionId), days: joinLinkDaysSchema }),
  run: async ({ data, actor, now }, { courseId: course, role, sectionId: section, days }) => {
    if (actor.kind !== 'person' || !(await data.courses.byId(course))) throw notFound();
    if (section !== null && !(await data.sections.byId(course, section))) throw notFound();
    if (role !== 'student' && days > longestForStaff) throw tooLong(role, days);
    const token = newToken();
    const expiresAt = new Date(now.getTime() + days * 24 * 60 * 60 * 1000);
    await data.transaction(async (inside) => {
      const link = await inside.joinLinks.make(
        {
          courseId: course,
          tokenHash: hashToken(token),
          role,
          sectionId: section,
          createdById: actor.userId,
          expiresAt,
        },
        now,
      );
      await inside.audit.record(
        {
          courseId: course,
          verb: 'join link made',
          subject: `join-link:${link.id}`,
          details: { role, sectionId: section, expiresAt: expiresAt.toISOString() },
        },
        now,
      );
    });
    return { path: `/join/${token}`, role, expiresAt };
  },
});

function tooLong(role: string, days: number): AppError {
  const said = `A link for the role ${role} works for at most ${longestForStaff} days (given: ${days}): it opens the work of the whole course.`;
  return new AppError('INVALID', said, { fields: { days: said } });
}
