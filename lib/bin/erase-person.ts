// npm run -s erase-person -- ADDRESS --yes ADDRESS: erases the person with this e-mail address for good, at their
// request. Spacings and marks stay without a name. Without --yes and the same address again, nothing is done.
import { parseArgs } from 'node:util';
import { systemCaller } from '@/lib/access/caller';
import { erasePerson } from '@/lib/account/erase';
import { fail } from './fail';
import { answerHelp } from './help';

answerHelp(`npm run -s erase-person -- ADDRESS --yes ADDRESS
  Erases the person with this e-mail address for good. Spacings and marks stay without a name.`);

try {
  const {
    positionals: [email],
    values: { yes },
  } = parseArgs({ allowPositionals: true, options: { yes: { type: 'string' } } });
  if (email === undefined)
    throw new Error(
      'Give the person’s e-mail address: npm run -s erase-person -- name@school.example --yes name@school.example',
    );
  if (yes === undefined)
    throw new Error(
      `Nothing was erased. This can’t be undone; to say that it is meant, write the address again: npm run -s erase-person -- ${email} --yes ${email}`,
    );
  const { name } = await erasePerson(systemCaller('a person erased at the console, at their request'), { email, yes });
  console.log(
    `${name} was erased. Spacings and marks stay without a name. Backups from before still hold the person: keep none longer than your rule for records allows.`,
  );
  process.exit(0);
} catch (error) {
  fail(error);
}
