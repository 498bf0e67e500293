import type { ScopedData } from '@/lib/data';
import { hashToken, newToken } from './token';

/** What the browser gets to keep: the secret of a new session row. */
export type OpenedSession = { sessionToken: string };

/** Signs a person in who has just proven who they are. */
export async function openSession(data: ScopedData, userId: string, now: Date): Promise<OpenedSession> {
  const sessionToken = newToken();
  await data.sessions.open(userId, hashToken(sessionToken), now);
  return { sessionToken };
}
