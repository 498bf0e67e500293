import type { AuthOptions, User } from 'next-auth';
import { systemCaller } from '@/lib/access/caller';
import { AppError } from '@/lib/access/errors';
import { signInThroughSchool } from '@/lib/account/sign-in-through-school';
import { signOut } from '@/lib/account/sessions';
import { env } from '@/lib/env';
import { callerOfSession } from './caller';
import { logError } from '@/lib/log';
import { safeNext } from './next-address';
import { schoolProvider } from './school-provider';
import { authSecret, sessionSeconds } from './session-cookie';

/** A person who has just proven who they are, with the secret of their new session row. */
type Proven = User & { sessionToken?: string };

/**
 * next-auth asks the school's sign-in who the person is and encrypts the cookie; whether the session is still valid is
 * decided by a row of ours. The cookie holds nothing but the row's secret. Its own pages are off: ours replace them. It
 * has no password sign-in: the form on the sign-in page is the one door for that.
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
    providers: schoolProvider(),
    callbacks: {
      signIn: async ({ user, account, profile }) =>
        account?.type === 'oauth' ? proveThroughSchool(user, profile as Record<string, unknown>) : true,
      jwt: ({ token, user }) => ({ sessionToken: (user as Proven | undefined)?.sessionToken ?? token.sessionToken }),
      // The person's own pages read the row; programs learn nothing from here.
      session: ({ session }) => ({ expires: session.expires }),
      redirect: ({ url }) =>
        publicOrigin + safeNext(url.startsWith(publicOrigin) ? url.slice(publicOrigin.length) : url),
    },
    events: { signOut: ({ token }) => endRow(token?.sessionToken) },
    logger: {
      error: (code, metadata) => logError(new Error(`next-auth: ${code}`, { cause: metadata })),
      warn: () => {},
      debug: () => {},
    },
  };
}

/** Ends the row of the session whose cookie the library's own sign-out takes away. */
async function endRow(sessionToken: unknown): Promise<void> {
  if (typeof sessionToken !== 'string') return;
  const caller = await callerOfSession({ sessionToken, address: 'signing out', cookie: null });
  if (caller.kind === 'person') await signOut(caller, {});
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
