import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { signInSchema } from '@/shared/schemas/account';
import { openSession } from './sessions';
import { passwordFits } from './password';
import { addressOf, takeTry } from './tries';

/**
 * Signs in with e-mail and password. A try is counted before the password is looked at, so that many at the same
 * moment are all counted, and given back when it fits. Answer and time are the same for unknown addresses.
 */
export const signIn = operation({
  name: 'sign-in',
  allow: 'open',
  input: signInSchema,
  run: async ({ data, caller, now }, { email, password }) => {
    const address = addressOf(caller);
    await takeTry(data, 'sign-in-address', address);
    await takeTry(data, 'sign-in-account', email);
    const person = await data.signIn.byEmail(email);
    const fits = await passwordFits(person?.passwordHash, password);
    if (!person || !fits) throw doNotFit();
    await data.rateLimits.forget('sign-in-account', email);
    await data.rateLimits.giveBack('sign-in-address', address);
    return openSession(data, person.id, now);
  },
});

const doNotFit = () =>
  new AppError('INVALID', 'That e-mail address and password don’t match. Check both; capitals count in the password.');
