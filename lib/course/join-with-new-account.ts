import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import { addressTaken, linkIsOver } from '@/lib/account/link-errors';
import { openSession } from '@/lib/account/open-session';
import { hashPassword } from '@/lib/account/password';
import { refuseWeak } from '@/lib/account/refuse-weak';
import { hashToken } from '@/lib/account/token';
import { addressOf, takeTry } from '@/lib/account/tries';
import { isTaken } from '@/lib/data/retry';
import { linkTokenSchema, newAccountSchema } from '@/shared/schemas/account';
import { addMember } from './add-member';

/** Makes an account, joins the course of the link with it, and signs in: all or nothing. */
export const joinWithNewAccount = operation({
  name: 'join-with-new-account',
  allow: 'open',
  input: z.object({ token: linkTokenSchema, ...newAccountSchema.shape }),
  run: async ({ data, caller, now }, { token, name, email, password }) => {
    await takeTry(data, 'new-account-address', addressOf(caller));
    if (!(await data.joinLinks.byToken(hashToken(token), now))) throw linkIsOver();
    refuseWeak(password, name, email);
    const passwordHash = await hashPassword(password);
    try {
      return await data.transaction(async (inside) => {
        const link = await inside.joinLinks.byToken(hashToken(token), now);
        if (!link) throw linkIsOver();
        const person = await inside.signIn.makePerson({ emailNorm: email, name, passwordHash }, now);
        await addMember(inside, link, person.id, now);
        return { courseId: link.courseId, ...(await openSession(inside, person.id, now)) };
      });
    } catch (error) {
      throw isTaken(error) ? addressTaken() : error;
    }
  },
});
