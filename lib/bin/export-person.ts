// npm run -s export-person -- ADDRESS: everything stored about the person with this e-mail address, as JSON, to be
// given to them on request (and to no one else). Write it to a file: … > records.json
import { systemCaller } from '@/lib/access/caller';
import { exportPersonData } from '@/lib/account/records';
import { fail } from './fail';
import { answerHelp } from './help';

answerHelp(`npm run -s export-person -- ADDRESS > FILE
  Writes everything that is kept about the person with this e-mail address, as JSON.`);

const [email] = process.argv.slice(2);
try {
  if (email === undefined)
    throw new Error('Give the person’s e-mail address: npm run -s export-person -- name@school.example');
  const records = await exportPersonData(systemCaller('a person’s records, asked for at the console'), { email });
  process.stdout.write(`${JSON.stringify(records, null, 2)}\n`, () => process.exit(0));
} catch (error) {
  fail(error);
}
