import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import { isTaken } from '@/lib/data/retry';
import { linkTokenSchema, newAccountSchema } from '@/shared/schemas/account';
import { addressTaken, linkIsOver } from './link-errors';
import { openSession } from './open-session';
import { hashPassword } from './password';
import { refuseWeak } from './refuse-weak';
import { hashToken } from './token';
import { addressOf, takeTry } from './tries';

/** Makes the first instructor's account from the link that the console showed. The link works once. */
export const becomeFirstInstructor = operation({
  name: 'become-first-instructor',
  allow: 'open',
  input: z.object({ token: linkTokenSchema, ...newAccountSchema.shape }),
  run: async ({ data, caller, now }, { token, name, email, password }) => {
    await takeTry(data, 'link-address', addressOf(caller));
    const link = await data.oneTimeLinks.open('first-instructor', hashToken(token), now);
    if (!link) throw linkIsOver();
    refuseWeak(password, name, email);
    const passwordHash = await hashPassword(password);
    try {
      return await data.transaction(async (inside) => {
        if (!(await inside.oneTimeLinks.use(link.id, now))) throw linkIsOver();
        const person = await inside.signIn.makePerson(
          { emailNorm: email, name, passwordHash, mayCreateCourses: true },
          now,
        );
        await inside.audit.record(
          {
            courseId: null,
            verb: 'course making allowed',
            subject: `user:${person.id}`,
            details: { by: 'first link' },
          },
          now,
          person.id,
        );
        return openSession(inside, person.id, now);
      });
    } catch (error) {
      throw isTaken(error) ? addressTaken() : error;
    }
  },
});
