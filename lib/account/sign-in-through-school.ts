import * as z from 'zod';
import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict } from '@/lib/data/retry';
import { emailSchema, personNameSchema } from '@/shared/schemas/account';
import { openSession } from './sessions';

const claims = z.object({
  issuer: z.string().min(1),
  subject: z.string().min(1).max(255),
  email: z.nullable(emailSchema),
  emailVerified: z.boolean(),
  name: z.nullable(personNameSchema),
});
type Claims = z.infer<typeof claims>;

/**
 * Signs in whom another issuer vouches for (OpenID Connect Core 1.0 §5.7: issuer and subject together name a person,
 * an e-mail address does not). At the first time the account with the same verified address is tied to it, or a new
 * one is made.
 */
export const signInThroughSchool = operation({
  name: 'sign-in-through-school',
  allow: 'system',
  input: claims,
  run: ({ data, now }, claimed) =>
    retryOnConflict(() =>
      data.transaction(async (inside) => openSession(inside, await personOf(inside, claimed, now), now)),
    ),
});

async function personOf(
  data: ScopedData,
  { issuer, subject, email, emailVerified, name }: Claims,
  now: Date,
): Promise<string> {
  const known = await data.signIn.byIdentity(issuer, subject);
  if (known) return known.userId;
  if (email === null || !emailVerified) throw notVerified();
  const sameAddress = await data.signIn.byEmail(email);
  const id =
    sameAddress?.id ??
    (await data.signIn.makePerson({ emailNorm: email, name: name ?? email, passwordHash: null }, now)).id;
  if (sameAddress) {
    // The address was unproven until now: the account may have been opened with it by a different person.
    await data.signIn.dropPassword(id);
    await data.sessions.endAll(id, now);
  }
  await data.signIn.addIdentity(id, issuer, subject, now);
  return id;
}

const notVerified = () =>
  new AppError(
    'INVALID',
    'Your school’s sign-in did not confirm an e-mail address for you, so it can’t be tied to an account here. Ask the people who run it to confirm your address, or sign in with a password.',
  );
