import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { courseId, joinLinkId } from './ids';

/** From now on nobody joins by this link. Whoever joined by it stays. */
export const revokeJoinLink = operation({
  name: 'revoke-join-link',
  allow: 'member:manage',
  input: z.object({ courseId, joinLinkId }),
  run: async ({ data, now }, { courseId: course, joinLinkId: link }) => {
    await data.transaction(async (inside) => {
      if ((await inside.joinLinks.revoke(course, link, now)).count !== 1) throw notFound();
      await inside.audit.record({ courseId: course, verb: 'join link revoked', subject: `join-link:${link}` }, now);
    });
    return {};
  },
});
