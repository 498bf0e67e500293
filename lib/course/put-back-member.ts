import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import { changeMember } from './change-member';
import { courseId, memberId } from './ids';

/** Undoes a removal: the same membership, with all its work. */
export const putBackMember = operation({
  name: 'put-back-member',
  allow: 'member:manage',
  input: z.object({ courseId, memberId }),
  run: async ({ data, now }, which) => {
    await changeMember(
      data,
      { ...which, verb: 'member put back', make: (member) => (member.removedAt ? { removedAt: null } : null) },
      now,
    );
    return {};
  },
});
