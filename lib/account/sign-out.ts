import * as z from 'zod';
import { operation } from '@/lib/access/operation';

/** Ends the session this is sent with. */
export const signOut = operation({
  name: 'sign-out',
  allow: 'account:own',
  input: z.object({}),
  run: async ({ data, actor, now }) => {
    if (actor.kind === 'person') await data.sessions.endOwn(actor.sessionId, now);
    return {};
  },
});
