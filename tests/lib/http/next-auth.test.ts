import { encode } from 'next-auth/jwt';
import type { NextApiRequest, NextApiResponse } from 'next';
import NextAuth from 'next-auth';
import { expect, it } from 'vitest';
import { recogniseSession } from '@/lib/account/sessions';
import { signIn } from '@/lib/account/sign-in';
import { hashPassword } from '@/lib/account/password';
import { systemCaller } from '@/lib/access/caller';
import { authOptions } from '@/lib/http/next-auth';
import { authSecret } from '@/lib/http/session-cookie';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { addPerson, visitor } from '../../fixtures/people';

const password = 'paper boats in rain';

describeOnBothDatabases('the library’s own addresses', (suite) => {
  const signedIn = async () => {
    const person = await addPerson(suite.db, { passwordHash: await hashPassword(password) });
    return { person, ...(await signIn(visitor(), { email: person.email, password })) };
  };
  const counts = async (sessionToken: string) =>
    (await recogniseSession(systemCaller('looking in a test'), { sessionToken })) !== null;

  it('have no way in by password', async () => {
    const { person } = await signedIn();
    expect(authOptions().providers.map(({ id }) => id)).not.toContain('password');
    const { cookies } = await ask('callback/password', { email: person.email, password });
    expect(cookies['next-auth.session-token'] ?? '').toBe('');
    expect(await suite.db.authSession.count({ where: { userId: person.id } })).toBe(1);
  });

  it('end the session’s row on signing out', async () => {
    const one = await signedIn();
    const other = await signedIn();
    await ask('signout', {}, one.sessionToken);
    expect(await counts(one.sessionToken)).toBe(false);
    expect(await counts(other.sessionToken)).toBe(true);
  });

  it('sign out quietly where the session was ended before', async () => {
    const { sessionToken, person } = await signedIn();
    await suite.db.authSession.updateMany({ where: { userId: person.id }, data: { revokedAt: new Date() } });
    expect((await ask('signout', {}, sessionToken)).cookies).toMatchObject({ 'next-auth.session-token': '' });
  });
});

/** A form sent to an address of next-auth, with its token against forgery and, if given, the cookie of a session. */
async function ask(path: string, body: Record<string, string>, sessionToken?: string) {
  const first = await call('GET', 'csrf', {}, {});
  const cookies = { ...first.cookies };
  if (sessionToken !== undefined)
    cookies['next-auth.session-token'] = await encode({ token: { sessionToken }, secret: authSecret() });
  const { csrfToken } = first.body as { csrfToken: string };
  return call('POST', path, cookies, { ...body, csrfToken, json: 'true' });
}

/** The little of Node's request and response that next-auth asks for. */
async function call(method: string, path: string, cookies: Record<string, string>, body: Record<string, string>) {
  const headers = new Map<string, unknown>();
  let told: unknown;
  const response = {
    status: () => response,
    getHeader: (name: string) => headers.get(name),
    setHeader: (name: string, value: unknown) => headers.set(name, value),
    json: (value: unknown) => void (told = value),
    send: (value: unknown) => void (told = value),
    end: () => undefined,
  };
  const request = { method, query: { nextauth: path.split('/') }, headers: {}, cookies, body };
  await NextAuth(request as unknown as NextApiRequest, response as unknown as NextApiResponse, authOptions());
  const set = ([headers.get('Set-Cookie') ?? []].flat() as string[]).map((one) => one.split(';')[0]!);
  return {
    body: told,
    cookies: Object.fromEntries(
      set.map((one) => [one.slice(0, one.indexOf('=')), decodeURIComponent(one.slice(one.indexOf('=') + 1))]),
    ),
  };
}
