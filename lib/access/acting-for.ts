import { scopedData, type ScopedData } from '@/lib/data';
import type { Actor } from './actor';

/**
 * The queries of one person's own things, for an operation that the server's operator runs on that person's behalf (a
 * request to be given or rid of one's data). @throws Error for everybody who is not the system itself.
 */
export function actingFor(actor: Actor, userId: string): ScopedData {
  if (actor.kind !== 'system') throw new Error(`Only the system acts for others, not a ${actor.kind}.`);
  return scopedData({ kind: 'person', userId, sessionId: 'console', roles: [] });
}
