import { createReadStream } from 'node:fs';
import { buildPairs } from '@/lib/face/build-pack';
import { quoted } from '@/lib/face/face-error';
import type { PairsCommand } from './arguments';
import { CommandError } from './command-error';
import { faceSource } from './face-source';
import { pairFigures } from './pair-figures';

/** Enough for every pair that may be asked for at once. */
const MOST_BYTES = 1_000_000;

/** Prints one JSON object a line for each pair read. Nothing is printed when one of them can't be measured. */
export async function measurePairs(command: PairsCommand): Promise<void> {
  const source = await faceSource(command);
  const pairs = splitPairs(await readAll(command.from));
  const table = await buildPairs(source, pairs);
  const lines = pairFigures(table).map((figures) => JSON.stringify(figures));
  process.stdout.write(lines.length > 0 ? `${lines.join('\n')}\n` : '');
}

function splitPairs(text: string): string[] {
  const lines = text.split(/\r\n|\n|\r/);
  while (lines.at(-1) === '') lines.pop();
  if (lines.length === 0)
    throw new CommandError('No pairs were given. Give two letters a line on standard input, for example “AV”.');
  return lines;
}

async function readAll(from: string): Promise<string> {
  const stream = from === '-' ? process.stdin : createReadStream(from);
  const chunks: Buffer[] = [];
  let bytes = 0;
  try {
    for await (const chunk of stream as AsyncIterable<Buffer>) {
      bytes += chunk.byteLength;
      if (bytes > MOST_BYTES)
        throw new CommandError(`The list of pairs is longer than ${MOST_BYTES} bytes. Give fewer at once.`);
      chunks.push(chunk);
    }
  } catch (error) {
    if (error instanceof CommandError) throw error;
    throw new CommandError(
      `The pairs can't be read from ${quoted(from, 200)}: ${error instanceof Error ? error.message : String(error)}.`,
    );
  }
  return Buffer.concat(chunks).toString('utf8');
}
