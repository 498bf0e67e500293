import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import { changeMember } from './change-member';
import { courseId, memberId } from './ids';

/** Takes a person out of the course at once and ends their sessions. Their work stays, and they can be put back. */
export const removeMember = operation({
  name: 'remove-member',
  allow: 'member:manage',
  input: z.object({ courseId, memberId }),
  run: async ({ data, now }, which) => {
    await changeMember(
      data,
      {
        ...which,
        verb: 'member removed',
        make: async (member, inside) => {
          if (member.removedAt) return null;
          if (member.user) await inside.sessions.endAll(member.user.id, now);
          return { removedAt: now };
        },
      },
      now,
    );
    return {};
  },
});
