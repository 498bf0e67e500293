import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';

/** Ends one of the person's own sessions, e.g. the browser of a classroom computer. */
export const endSession = operation({
  name: 'end-session',
  allow: 'account:own',
  input: z.object({ sessionId: z.string() }),
  run: async ({ data, now }, { sessionId }) => {
    if ((await data.sessions.endOwn(sessionId, now)).count !== 1) throw notFound();
    return {};
  },
});
