// npm run bench -- NAME…: runs tests/bench/NAME.ts, each beside a baseline in the same run. Without a name, all of
// them. What one prints goes into FIGURES.md when it has run to its end.
import { readdirSync } from 'node:fs';
import { keepFigures, printedBy } from './figures';

const folder = new URL('./', import.meta.url);
const known = readdirSync(folder)
  .filter((file) => file.endsWith('.ts') && !['run.ts', 'figures.ts'].includes(file))
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
    keepFigures(`${settingsOf(name)}npm run -s bench -- ${name}`, await printedBy(bench.default));
  }
}

/** What was set for this benchmark, e.g. `CLASS_SIZES=300 `: it belongs to its command. */
function settingsOf(name: string): string {
  const own = Object.entries(process.env).filter(([key]) => key.startsWith(`${name.toUpperCase()}_`));
  return own.map(([key, value]) => `${key}=${value} `).join('');
}
