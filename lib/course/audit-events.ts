import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { courseId } from './courses';

/** Acts on one page. */
export const eventsPerPage = 50;

/** What was done to the course, its people, marks and releases: the newest acts, or those before one that was shown. */
export const listAuditEvents = operation({
  name: 'list-audit-events',
  allow: 'records:read',
  input: z.object({ courseId, before: z.nullable(z.string().max(100)).default(null) }),
  run: async ({ data }, input) => {
    if (!(await data.courses.byId(input.courseId))) throw notFound();
    const rows = await data.audit.ofCourse(input.courseId, { before: input.before, take: eventsPerPage + 1 });
    const shown = rows.slice(0, eventsPerPage);
    const memberIds = shown.flatMap(({ subject }) =>
      subject.startsWith('member:') ? [subject.slice('member:'.length)] : [],
    );
    const names = await data.members.names(input.courseId, memberIds);
    return {
      acts: shown.map(({ id, verb, subject, at, actor }) => ({
        id,
        verb,
        who: actor?.name || null,
        whom: names.get(subject.replace('member:', '')) ?? null,
        at,
      })),
      /** The act after which older ones follow; null where there are none. */
      older: rows.length > shown.length ? (shown.at(-1)?.id ?? null) : null,
    };
  },
});
