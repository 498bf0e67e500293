// npm run -s password-link -- ADDRESS: a link by which the person with this e-mail address sets a new password, for
// instructors, who can't ask another one. It works once, for a day; anyone who opens it can sign in as that person.
import { env } from '@/lib/env';
import { systemCaller } from '@/lib/access/caller';
import { createPasswordLinkByAddress } from '@/lib/account/password-links';
import { fail } from './fail';
import { answerHelp } from './help';

answerHelp(`npm run -s password-link -- ADDRESS
  Makes a link by which the person with this e-mail address sets a new password. It works once, for a day.`);

const [email] = process.argv.slice(2);
try {
  if (email === undefined)
    throw new Error('Give the person’s e-mail address: npm run -s password-link -- name@school.example');
  const { name, path, expiresAt } = await createPasswordLinkByAddress(
    systemCaller('a link for a new password, asked for at the console'),
    { email },
  );
  console.log(
    `For ${name}, once, until ${expiresAt.toISOString().slice(0, 16).replace('T', ' ')} UTC:\n${env().publicOrigin}${path}`,
  );
  process.exit(0);
} catch (error) {
  fail(error);
}
