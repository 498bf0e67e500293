import { channel } from 'node:diagnostics_channel';
import { cache } from 'react';
import { headers } from 'next/headers';
import { systemCaller, type Caller } from '@/lib/access/caller';
import { recogniseSession } from '@/lib/account/sessions';
import { env } from '@/lib/env';
import { clientAddress } from './client-address';
import { type KnownCookie, knownCookieChannel, sessionCookieOf } from './gate';
import { readSessionCookie } from './session-cookie';

/** Who sends this request, asked once a request. Without a session that the database still knows, a visitor. */
export const currentCaller = cache(async (): Promise<Caller> => callerOfSession(await readCallerSource()));

/** What a request brings by which its sender is known; good for asking again as long as it lasts. */
export type CallerSource = { sessionToken: string | null; address: string; cookie: string | null };

export async function readCallerSource(): Promise<CallerSource> {
  const sent = await headers();
  return {
    address: clientAddress(sent, env().trustedProxies),
    sessionToken: await readSessionCookie(),
    cookie: sessionCookieOf(sent.get('cookie') ?? ''),
  };
}

const knownCookies = channel(knownCookieChannel);

export async function callerOfSession({ sessionToken, address, cookie }: CallerSource): Promise<Caller> {
  if (sessionToken === null) return { kind: 'visitor', address };
  const known = await recogniseSession(systemCaller('recognising the session of a request'), { sessionToken });
  if (known && cookie !== null) knownCookies.publish({ cookie, userId: known.userId } satisfies KnownCookie);
  return known ? { kind: 'person', ...known, address } : { kind: 'visitor', address };
}
