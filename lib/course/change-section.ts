import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { changeMember } from './change-member';
import { courseId, memberId, sectionId } from './ids';

/** Moves a member to another section, or into none. */
export const changeSection = operation({
  name: 'change-section',
  allow: 'member:manage',
  input: z.object({ courseId, memberId, sectionId: z.nullable(sectionId) }),
  run: async ({ data, now }, { sectionId: section, ...which }) => {
    await changeMember(
      data,
      {
        ...which,
        verb: 'section changed',
        make: async (member, inside) => {
          if (section !== null && !(await inside.sections.byId(which.courseId, section))) throw notFound();
          return member.sectionId === section ? null : { sectionId: section };
        },
      },
      now,
    );
    return {};
  },
});
