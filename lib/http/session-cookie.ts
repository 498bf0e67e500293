import { cookies } from 'next/headers';
import { decode, encode } from 'next-auth/jwt';
import { sessionDays } from '@/lib/account/sessions';
import { env } from '@/lib/env';

/** In seconds: as long as the session row itself. */
export const sessionSeconds = sessionDays * 24 * 60 * 60;

const secure = () => env().publicOrigin.startsWith('https:');
const cookieName = () => `${secure() ? '__Secure-' : ''}next-auth.session-token`;

/** The key that session cookies are encrypted with. `npm start` makes one; development has its own, known to all. */
export function authSecret(): string {
  const { authSecret: secret, production } = env();
  if (secret !== null) return secret;
  if (production)
    throw new Error('NEXTAUTH_SECRET is not set. Start with `npm start`, or set it to at least 32 random characters.');
  return 'for development only, and never for people’s work';
}

/**
 * The secret of the session row in the browser's cookie, or null. Encrypted by next-auth (JWE), so that it can't be
 * forged.
 */
export async function readSessionCookie(): Promise<string | null> {
  const token = (await cookies()).get(cookieName())?.value;
  if (!token) return null;
  try {
    const carried = await decode({ token, secret: authSecret() });
    return typeof carried?.sessionToken === 'string' ? carried.sessionToken : null;
  } catch {
    // Made with another key, cut short, or over its date: the browser is signed out.
    return null;
  }
}

/** The same cookie that next-auth sets for a sign-in through it. */
export async function writeSessionCookie(sessionToken: string): Promise<void> {
  const value = await encode({ token: { sessionToken }, secret: authSecret(), maxAge: sessionSeconds });
  (await cookies()).set(cookieName(), value, {
    httpOnly: true,
    sameSite: 'lax',
    path: '/',
    secure: secure(),
    maxAge: sessionSeconds,
  });
}

export async function clearSessionCookie(): Promise<void> {
  (await cookies()).set(cookieName(), '', { httpOnly: true, sameSite: 'lax', path: '/', secure: secure(), maxAge: 0 });
}
