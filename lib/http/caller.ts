import type { Caller } from '@/lib/access/actor';

/** Who sends this request. Without a session that the database still knows, a visitor. */
export async function currentCaller(): Promise<Caller> {
  return { kind: 'visitor', address: 'unknown' };
}
