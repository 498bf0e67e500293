import { createHash, randomBytes } from 'node:crypto';

/** A secret for a link or a session: 32 random bytes in base64url (43 characters). Shown once, never stored. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

/** What is stored of a token: its SHA-256 in hexadecimal. A token has 256 random bits, so that no salt is needed. */
export function hashToken(token: string): string {
  return createHash('sha256').update(token, 'utf8').digest('hex');
}
