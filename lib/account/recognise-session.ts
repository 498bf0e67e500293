import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import { hashToken } from './token';

/** Who holds this session, if it still counts. Asked on every request; null for one that was ended. */
export const recogniseSession = operation({
  name: 'recognise-session',
  allow: 'system',
  input: z.object({ sessionToken: z.string() }),
  run: async ({ data, now }, { sessionToken }) => {
    const session = await data.sessions.byToken(hashToken(sessionToken), now);
    if (!session) return null;
    await data.sessions.seen(session, now);
    return { userId: session.userId, sessionId: session.id };
  },
});
