import * as z from 'zod/mini';
import { buildPack } from '@/lib/face/build-pack';
import { quoted } from '@/lib/face/face-error';
import { measureLine } from '@/shared/scoring';
import type { Pack } from '@/shared/schemas/pack';
import type { LinesCommand } from './arguments';
import { sizeOf } from './arguments';
import { CommandError } from './command-error';
import { faceSource } from './face-source';
import { readLines } from './read-input';

const asked = z.strictObject({
  text: z.string(),
  offsets: z.optional(z.array(z.int())),
  tracking: z.optional(z.int()),
  /** A number of px, or a size such as "36pt". */
  size: z.optional(z.union([z.number(), z.string()])),
});

/** Prints one JSON object a line for each line of text read. Nothing is printed when one of them can't be measured. */
export async function measureLines(command: LinesCommand): Promise<void> {
  const source = await faceSource(command);
  const lines = await readLines(command.from, 'lines');
  if (lines.length === 0)
    throw new CommandError('No lines were given. Give one JSON object a line, for example {"text":"Tavern"}.');
  const packs = new Map<string, Pack>();
  const answers: string[] = [];
  for (const [index, line] of lines.entries()) {
    const { text, offsets, tracking, size } = read(line, index);
    const pack = packs.get(text) ?? (await buildPack(source, text));
    packs.set(text, pack);
    const spacing = { tracking: tracking ?? 0, offsets: offsets ?? pack.builtIn.map(() => 0) };
    const at = size === undefined ? command.size : sizeOf(typeof size === 'number' ? `${size}px` : size);
    const measured = measureLine(pack, spacing, { size: at, ground: command.ground });
    answers.push(
      JSON.stringify({
        text: measured.text,
        size: at,
        tracking: spacing.tracking,
        tightness: measured.line.tightness,
        pairs: measured.pairs,
      }),
    );
  }
  process.stdout.write(`${answers.join('\n')}\n`);
}

function read(line: string, index: number): z.infer<typeof asked> {
  const given = asked.safeParse(parsed(line, index));
  if (given.success) return given.data;
  throw new CommandError(
    `Line ${index + 1} is not what is wanted: ${quoted(line)}. Give {"text", "offsets"?, "tracking"?, "size"?}: offsets and tracking in whole 1/1000 em, one offset a gap, the size in px.`,
  );
}

function parsed(line: string, index: number): unknown {
  try {
    return JSON.parse(line);
  } catch {
    throw new CommandError(
      `Line ${index + 1} is no JSON: ${quoted(line)}. Give one object a line, for example {"text":"Tavern"}.`,
    );
  }
}
