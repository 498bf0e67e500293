import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import { recordOnPerson } from '@/lib/course/record-on-person';
import { emailSchema } from '@/shared/schemas/account';
import { nobodyHere } from './link-errors';
import { makePasswordLink } from './make-password-link';

/** A link for a new password, for whoever runs the server to hand over: the way back in for people who teach. */
export const makePasswordLinkByAddress = operation({
  name: 'make-password-link-by-address',
  allow: 'system',
  input: z.object({ email: emailSchema }),
  run: async ({ data, now }, { email }) => {
    const person = await data.signIn.byEmail(email);
    if (!person) throw nobodyHere(email);
    const made = await makePasswordLink(data, { userId: person.id, createdById: null, hours: 24 }, now);
    await recordOnPerson(data, person.id, { verb: 'password link handed over', details: { by: 'console' } }, now);
    return { name: person.name, ...made };
  },
});
