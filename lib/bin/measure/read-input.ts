import { createReadStream } from 'node:fs';
import { quoted } from '@/lib/face/face-error';
import { CommandError } from './command-error';

/** Enough for everything that may be asked for at once. */
const MOST_BYTES = 4_000_000;

/**
 * The lines of standard input (`-`) or a file, without empty ones at the end. `what` is what they hold, for the error's
 * words.
 */
export async function readLines(from: string, what: string): Promise<string[]> {
  const lines = (await readAll(from, what)).split(/\r\n|\n|\r/);
  while (lines.at(-1) === '') lines.pop();
  return lines;
}

async function readAll(from: string, what: string): Promise<string> {
  const stream = from === '-' ? process.stdin : createReadStream(from);
  const chunks: Buffer[] = [];
  let bytes = 0;
  try {
    for await (const chunk of stream as AsyncIterable<Buffer>) {
      bytes += chunk.byteLength;
      if (bytes > MOST_BYTES)
        throw new CommandError(`The list of ${what} is longer than ${MOST_BYTES} bytes. Give fewer at once.`);
      chunks.push(chunk);
    }
  } catch (error) {
    if (error instanceof CommandError) throw error;
    throw new CommandError(
      `The ${what} can't be read from ${quoted(from, 200)}: ${error instanceof Error ? error.message : String(error)}.`,
    );
  }
  return Buffer.concat(chunks).toString('utf8');
}
