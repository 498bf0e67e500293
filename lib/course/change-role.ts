import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import { roleSchema } from '@/shared/schemas/course';
import { changeMember } from './change-member';
import { courseId, memberId } from './ids';

/** Gives a member another role. Their work and what they wrote stay theirs. */
export const changeRole = operation({
  name: 'change-role',
  allow: 'member:manage',
  input: z.object({ courseId, memberId, role: roleSchema }),
  run: async ({ data, now }, { role, ...which }) => {
    await changeMember(
      data,
      { ...which, verb: 'role changed', make: (member) => (member.role === role ? null : { role }) },
      now,
    );
    return {};
  },
});
