import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { signInSchema } from '@/shared/schemas/account';
import { openSession } from './sessions';
import { passwordFits } from './password';
import { hashToken } from './token';
import { addressOf, countTry } from './tries';

/** Each is counted for one account from one address; where the first says no, the later ones are not asked. */
const waits = ['sign-in-seconds', 'sign-in-minutes', 'sign-in-hour'] as const;

/**
 * Signs in with e-mail and password. An attempt is counted before the password is compared, so that many at the same
 * moment all count, and uncounted when it matches. Answer and time are the same for unknown addresses.
 *
 * A guesser waits longer and longer, but only at their own network address: guessing can't lock the owner out of an
 * account, even from many addresses, if the owner has signed in from theirs before.
 */
export const signIn = operation({
  name: 'sign-in',
  allow: 'open',
  input: signInSchema,
  run: async ({ data, caller, now }, { email, password }) => {
    const address = addressOf(caller);
    // Stored for long, so not as readable text.
    const pair = hashToken(`${email} ${address}`);
    const known = await data.rateLimits.has('sign-in-known', pair);
    await countTry(data, 'sign-in-address', address);
    for (const wait of waits) await countTry(data, wait, pair);
    if (!known) await countTry(data, 'sign-in-account', email);
    const person = await data.signIn.byEmail(email);
    const fits = await passwordFits(person?.passwordHash, password);
    if (!person || !fits) throw doNotFit();
    for (const wait of waits) await data.rateLimits.forget(wait, pair);
    await data.rateLimits.giveBack('sign-in-address', address);
    if (!known) {
      await data.rateLimits.giveBack('sign-in-account', email);
      await data.rateLimits.take('sign-in-known', pair);
    }
    return openSession(data, person.id, now);
  },
});

const doNotFit = () =>
  new AppError('INVALID', 'That e-mail address and password don’t match. Check both; capitals count in the password.');
