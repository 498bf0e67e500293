// npm run -s measure: measures pairs of a face, or lines, from the command line. See USAGE for how.
import { readArguments, USAGE } from './measure/arguments';
import { CommandError } from './measure/command-error';
import { measureLines } from './measure/measure-lines';
import { measurePairs } from './measure/measure-pairs';
import { measureText } from './measure/measure-text';
import { FaceError } from '@/lib/face/face-error';
import { MeasureError } from '@/shared/measure-error';

try {
  const command = readArguments(process.argv.slice(2));
  if (command.task === 'help') process.stdout.write(`${USAGE}\n`);
  else if (command.task === 'pairs') await measurePairs(command);
  else if (command.task === 'lines') await measureLines(command);
  else await measureText(command);
} catch (error) {
  if (!(error instanceof CommandError || error instanceof FaceError || error instanceof MeasureError)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = error instanceof CommandError ? error.exitCode : 1;
}
