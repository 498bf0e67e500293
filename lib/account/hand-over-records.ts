import * as z from 'zod/mini';
import { actingFor } from '@/lib/access/acting-for';
import { operation } from '@/lib/access/operation';
import { emailSchema } from '@/shared/schemas/account';
import { nobodyHere } from './link-errors';
import { recordsOf } from './records-of';

/** Everything that is kept about one person, for whoever runs the server to hand over when they ask for it. It is written down. */
export const handOverRecords = operation({
  name: 'hand-over-records',
  allow: 'system',
  input: z.object({ email: emailSchema }),
  run: async ({ data, actor, now }, { email }) => {
    const person = await data.signIn.byEmail(email);
    if (!person) throw nobodyHere(email);
    const records = await recordsOf(actingFor(actor, person.id), now);
    await data.audit.record(
      { courseId: null, verb: 'records handed over', subject: `user:${person.id}`, details: { by: 'console' } },
      now,
    );
    return records;
  },
});
