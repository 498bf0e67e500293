import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import { canonicalJson } from '@/shared/text/canonical-json';
import { accommodationsSchema } from '@/shared/schemas/course';
import { changeMember } from './change-member';
import { courseId, memberId } from './ids';

/** Sets what is different for one person: the whole of it, so that what is left out is as for everyone. */
export const setAccommodations = operation({
  name: 'set-accommodations',
  allow: 'member:manage',
  input: z.object({ courseId, memberId, accommodations: accommodationsSchema }),
  run: async ({ data, now }, { accommodations, ...which }) => {
    const written = canonicalJson(accommodations);
    await changeMember(
      data,
      {
        ...which,
        verb: 'accommodations changed',
        withoutValues: true,
        make: (member) => (member.accommodations === written ? null : { accommodations: written }),
      },
      now,
    );
    return {};
  },
});
