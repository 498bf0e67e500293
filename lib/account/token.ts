import { createHash, randomBytes } from 'node:crypto';
import { AppError } from '@/lib/access/errors';

/** A secret for a link or a session: 32 random bytes in base64url (43 characters). Shown once, never stored. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

/** What is stored of a token: its SHA-256 in hexadecimal. A token has 256 random bits, so that no salt is needed. */
export function hashToken(token: string): string {
  return createHash('sha256').update(token, 'utf8').digest('hex');
}

/** For forms behind a link: it was good when the page was opened, and is not now. */
export const linkIsOver = (): AppError =>
  new AppError(
    'EXPIRED',
    'This link has been used or revoked, or it has expired. Ask the person who gave it to you for a new one.',
  );

/** Shown only to a person who holds a valid link. */
export const addressTaken = (): AppError =>
  new AppError('INVALID', 'Nothing was made yet.', {
    fields: {
      email: 'There is an account with this address already. If it is yours, sign in with it and open the link again.',
    },
  });

/** For commands of the server's operator. */
export const noSuchAccount = (email: string): AppError =>
  new AppError('NOT_FOUND', `There is no account with the address “${email}”.`);
