import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { ruleMutants, type RuleMutant } from './mutants';

/**
 * Takes one condition out of lib at a time and asks whether the test that says its rule notices:
 * `npx tsx tests/bench/rules/run.ts`. It changes files of this checkout and puts them back, so nothing else may be at
 * work in it. What was found is kept in `node_modules/.cache/rules.json`; begun again it goes on from there.
 */
const kept = 'node_modules/.cache/rules.json';
type Fate = 'killed' | 'survived' | 'not in the file';

const keyOf = ({ file, from, to, rule }: RuleMutant) => JSON.stringify([file, from, to, rule]);

function fateOf({ file, from, to, rule }: RuleMutant): Fate {
  const before = readFileSync(file, 'utf8');
  if (before.split(from).length < 2) return 'not in the file';
  writeFileSync(
    file,
    before.replace(from, () => to),
  );
  try {
    const { status } = spawnSync(
      'node_modules/.bin/vitest',
      ['run', 'tests/abuse/rules.test.ts', '--reporter=dot', '-t', rule],
      { stdio: 'ignore' },
    );
    return status === 0 ? 'survived' : 'killed';
  } finally {
    writeFileSync(file, before);
  }
}

const fates = (existsSync(kept) ? JSON.parse(readFileSync(kept, 'utf8')) : {}) as Record<string, Fate>;
mkdirSync(path.dirname(kept), { recursive: true });
for (const mutant of ruleMutants) {
  const key = keyOf(mutant);
  if (fates[key] !== 'killed') fates[key] = fateOf(mutant);
  writeFileSync(kept, JSON.stringify(fates, null, 2));
  console.log(`${fates[key]}: ${mutant.file}, “${mutant.rule}”: ${mutant.from.replace(/\s+/g, ' ').slice(0, 70)}`);
}
const killed = ruleMutants.filter((mutant) => fates[keyOf(mutant)] === 'killed').length;
console.log(`${killed} of ${ruleMutants.length} killed.`);
process.exitCode = killed === ruleMutants.length ? 0 : 1;
