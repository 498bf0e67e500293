// npm run bench -- NAME…: runs tests/bench/NAME.ts, each beside a baseline in the same run. Without a name, all of them.
import { readdirSync } from 'node:fs';

const folder = new URL('./', import.meta.url);
const known = readdirSync(folder)
  .filter((file) => file.endsWith('.ts') && file !== 'run.ts')
  .map((file) => file.slice(0, -3))
  .sort();
const wanted = process.argv.slice(2).length > 0 ? process.argv.slice(2) : known;
const unknown = wanted.filter((name) => !known.includes(name));

if (unknown.length > 0) {
  process.stderr.write(`No benchmark “${unknown.join('”, “')}”. There are: ${known.join(', ')}.\n`);
  process.exitCode = 2;
} else {
  for (const name of wanted) {
    process.stdout.write(`\n${name}\n`);
    const bench = (await import(new URL(`${name}.ts`, folder).href)) as { default: () => Promise<void> };
    await bench.default();
  }
}
