import type { AuthOptions, User } from 'next-auth';
import Credentials from 'next-auth/providers/credentials';
import { systemCaller } from '@/lib/access/actor';
import { AppError } from '@/lib/access/errors';
import { signIn } from '@/lib/account/sign-in';
import { signInThroughSchool } from '@/lib/account/sign-in-through-school';
import { env } from '@/lib/env';
import { clientAddress } from './client-address';
import { logError } from './log';
import { safeNext } from './next-address';
import { schoolProvider } from './school-provider';
import { authSecret, sessionSeconds } from './session-cookie';

/** Somebody who has just proven who they are, with the secret of their new session row. */
type Proven = User & { sessionToken?: string };

/**
 * next-auth proves who somebody is and encrypts the cookie; that the session still counts is a row of ours. The cookie
 * carries nothing but the row's secret. Its own pages are off: ours stand in their place.
 */
export function authOptions(): AuthOptions {
  const { publicOrigin } = env();
  return {
    secret: authSecret(),
    useSecureCookies: publicOrigin.startsWith('https:'),
    session: { strategy: 'jwt', maxAge: sessionSeconds },
    pages: {
      signIn: '/sign-in',
      signOut: '/sign-in',
      error: '/sign-in',
      verifyRequest: '/sign-in',
      newUser: '/courses',
    },
    providers: [passwordProvider(), ...schoolProvider()],
    callbacks: {
      signIn: async ({ user, account, profile }) =>
        account?.type === 'oauth' ? proveThroughSchool(user, profile as Record<string, unknown>) : true,
      jwt: ({ token, user }) => ({ sessionToken: (user as Proven | undefined)?.sessionToken ?? token.sessionToken }),
      // The person's own pages read the row; programs learn nothing from here.
      session: ({ session }) => ({ expires: session.expires }),
      redirect: ({ url }) =>
        publicOrigin + safeNext(url.startsWith(publicOrigin) ? url.slice(publicOrigin.length) : url),
    },
    logger: {
      error: (code, metadata) => logError(new Error(`next-auth: ${code}`, { cause: metadata })),
      warn: () => {},
      debug: () => {},
    },
  };
}

function passwordProvider() {
  return Credentials({
    id: 'password',
    name: 'E-mail and password',
    credentials: { email: { type: 'email' }, password: { type: 'password' } },
    authorize: async (typed, request) => {
      const headers = new Headers(
        Object.entries(request.headers ?? {}).map(([name, value]): [string, string] => [name, String(value)]),
      );
      try {
        const opened = await signIn({ kind: 'visitor', address: clientAddress(headers, env().trustedProxies) }, typed);
        return { id: 'proven', ...opened };
      } catch (error) {
        if (error instanceof AppError) return null;
        throw error;
      }
    },
  });
}

/** True, or the page that says why not. */
async function proveThroughSchool(user: Proven, profile: Record<string, unknown>): Promise<true | string> {
  const { iss, sub, email, email_verified, name } = profile;
  try {
    const opened = await signInThroughSchool(systemCaller('sign-in through the school’s issuer'), {
      issuer: iss,
      subject: sub,
      email: email ?? null,
      emailVerified: email_verified === true || email_verified === 'true',
      name: name ?? null,
    });
    user.sessionToken = opened.sessionToken;
    return true;
  } catch (error) {
    if (!(error instanceof AppError)) throw error;
    return '/sign-in?error=NotVerified';
  }
}
