import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';

const file = fileURLToPath(new URL('./FIGURES.md', import.meta.url));
const head = `# Figures

What the benchmarks printed when they last ran to their end; they write this file themselves. Machines are noisy: a figure
stands beside what was measured in the same run.
`;

/** Puts what a benchmark printed in place of what it printed the last time, under its command. */
export function keepFigures(command: string, printed: string): void {
  const before = existsSync(file) ? readFileSync(file, 'utf8') : head;
  const [intro, ...sections] = before.split(/\n(?=## )/);
  const title = `## \`${command}\``;
  const others = sections.filter((section) => section.split('\n', 1)[0] !== title);
  const section = `${title}\n\n${circumstances()}\n\n${fenced(printed)}\n`;
  const sorted = [...others.map((other) => other.trimEnd() + '\n'), section].sort();
  writeFileSync(file, [intro!.trimEnd() + '\n', ...sorted].join('\n'));
}

/** Day, commit, Node and cores: a figure means little without them. */
function circumstances(): string {
  const day = new Date().toISOString().slice(0, 10);
  return `${day}, at ${commit()}, Node ${process.versions.node}, ${cpus().length} cores.`;
}

function commit(): string {
  try {
    return execFileSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' }).trim();
  } catch {
    return 'an unknown commit';
  }
}

/** Tables stay tables; everything else keeps its columns. */
function fenced(printed: string): string {
  const text = printed.replace(/\u001b\[[0-9;]*m/g, '').trim();
  return text.startsWith('|') ? text : `\`\`\`text\n${text}\n\`\`\``;
}

/** Runs work and gives back everything that it wrote to standard output, which is shown as ever. */
export async function printedBy(work: () => Promise<void>): Promise<string> {
  const write = process.stdout.write.bind(process.stdout);
  let printed = '';
  process.stdout.write = ((chunk: string | Uint8Array, ...rest: []) => {
    printed += typeof chunk === 'string' ? chunk : Buffer.from(chunk).toString('utf8');
    return write(chunk, ...rest);
  }) as typeof process.stdout.write;
  try {
    await work();
    return printed;
  } finally {
    process.stdout.write = write;
  }
}
