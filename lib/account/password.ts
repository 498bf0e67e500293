import { Algorithm, hash, verify } from '@node-rs/argon2';
import { atMost } from './at-most';

/**
 * Passwords are kept as argon2id with 19 MiB, two passes and one lane (OWASP Password Storage Cheat Sheet; PHC string
 * format, so that stronger settings can be told from older ones later).
 */
const settings = {
  algorithm: 2 satisfies Algorithm.Argon2id as Algorithm,
  memoryCost: 19456,
  timeCost: 2,
  parallelism: 1,
};

// Two at once, so that a burst of sign-ins can't take the memory and both processors from everyone else.
const inTurn = atMost({ running: 2, waiting: 60 });

/** The string to store. @throws AppError UNAVAILABLE when sixty others are waiting already. */
export function hashPassword(password: string): Promise<string> {
  return inTurn(() => hash(password, settings));
}

/**
 * Whether the password fits. Takes as long for an account that does not exist, or has no password, as for one that
 * does: both are compared, so that time tells nobody who has an account.
 */
export async function passwordFits(stored: string | null | undefined, password: string): Promise<boolean> {
  return inTurn(async () => {
    const fits = await verify(stored ?? (await placeholder()), password);
    return fits && stored != null;
  });
}

let made: Promise<string> | undefined;

/** The hash of a password nobody has, made once. */
function placeholder(): Promise<string> {
  made ??= hash(crypto.randomUUID(), settings);
  return made;
}
