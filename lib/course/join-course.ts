import * as z from 'zod';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { linkIsOver } from '@/lib/account/link-errors';
import { hashToken } from '@/lib/account/token';
import { retryOnConflict } from '@/lib/data/retry';
import { linkTokenSchema } from '@/shared/schemas/account';
import { addMember } from './add-member';

/**
 * Joins by a link, with the account that is signed in. Whoever is in the course already stays as they are: a link
 * changes nobody's role. Whoever was removed is not let in again by it.
 */
export const joinCourse = operation({
  name: 'join-course',
  allow: 'account:own',
  input: z.object({ token: linkTokenSchema }),
  run: ({ data, actor, now }, { token }) => {
    if (actor.kind !== 'person') throw notFound();
    const { userId } = actor;
    return retryOnConflict(() =>
      data.transaction(async (inside) => {
        const link = await inside.joinLinks.byToken(hashToken(token), now);
        if (!link) throw linkIsOver();
        const member = await inside.members.ownIn(link.courseId, userId);
        if (member?.removedAt) throw wasRemoved();
        if (!member) await addMember(inside, link, userId, now);
        return { courseId: link.courseId };
      }),
    );
  },
});

const wasRemoved = () =>
  new AppError(
    'CONFLICT',
    'You were in this course and have been removed from it, so this link does not let you in. Ask its instructor, who can put you back with all your work.',
  );
