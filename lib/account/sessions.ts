import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { hashToken, newToken } from './token';

export { sessionDays } from '@/lib/data/sessions';

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

/** What the browser gets to keep: the secret of a new session row. */
type OpenedSession = { sessionToken: string };

/** Signs a person in who has just proven who they are. */
export async function openSession(data: ScopedData, userId: string, now: Date): Promise<OpenedSession> {
  const sessionToken = newToken();
  await data.sessions.open(userId, hashToken(sessionToken), now);
  return { sessionToken };
}

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
