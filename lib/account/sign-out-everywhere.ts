import * as z from 'zod';
import { operation } from '@/lib/access/operation';

/** Ends all sessions of the person, this one among them. */
export const signOutEverywhere = operation({
  name: 'sign-out-everywhere',
  allow: 'account:own',
  input: z.object({}),
  run: async ({ data, actor, now }) => {
    const ended = actor.kind === 'person' ? await data.sessions.endAll(actor.userId, now) : { count: 0 };
    return { ended: ended.count };
  },
});
