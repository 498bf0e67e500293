import { buildPairs } from '@/lib/face/build-pack';
import type { PairsCommand } from './arguments';
import { CommandError } from './command-error';
import { faceSource } from './face-source';
import { pairFigures } from './pair-figures';
import { readLines } from './read-input';

/** Prints one JSON object a line for each pair read. Nothing is printed when one of them can't be measured. */
export async function measurePairs(command: PairsCommand): Promise<void> {
  const source = await faceSource(command);
  const pairs = await readLines(command.from, 'pairs');
  if (pairs.length === 0)
    throw new CommandError('No pairs were given. Give two letters a line on standard input, for example “AV”.');
  const table = await buildPairs(source, pairs);
  const lines = pairFigures(table).map((figures) => JSON.stringify(figures));
  process.stdout.write(`${lines.join('\n')}\n`);
}
