import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { ruleMutants, type RuleMutant } from './mutants';

/**
 * Takes conditions out of lib and asks whether the test that says the rule notices: `npx tsx tests/bench/rules/run.ts`.
 * One condition of each rule is out at a time, of all rules at once, since each has a test of its own; a run of the
 * tests costs far more than a test. It changes files of this checkout and puts them back, so nothing else may be at
 * work in it. What was found is kept in `node_modules/.cache/rules.json`; begun again it goes on from there.
 */
const kept = 'node_modules/.cache/rules.json';
const answers = 'node_modules/.cache/rules-answers.json';
type Answers = { testResults: { assertionResults: { title: string; status: string }[] }[] };
type Fate = 'killed' | 'survived' | 'not in the file';

const keyOf = ({ file, from, to, rule }: RuleMutant) => JSON.stringify([file, from, to, rule]);

/** Takes these conditions out together; gives the fate of each by whether the test of its rule failed. */
function fatesOf(batch: readonly RuleMutant[]): Fate[] {
  const before = new Map(batch.map(({ file }) => [file, readFileSync(file, 'utf8')]));
  const inFile = batch.map(({ file, from, to }) => {
    const text = readFileSync(file, 'utf8');
    if (text.includes(from))
      writeFileSync(
        file,
        text.replace(from, () => to),
      );
    return text.includes(from);
  });
  try {
    spawnSync(
      'node_modules/.bin/vitest',
      ['run', 'tests/abuse/rules.test.ts', '--reporter=json', `--outputFile=${answers}`],
      {
        stdio: 'ignore',
      },
    );
    const { testResults } = JSON.parse(readFileSync(answers, 'utf8')) as Answers;
    const failed = testResults.flatMap(({ assertionResults }) =>
      assertionResults.filter(({ status }) => status === 'failed').map(({ title }) => title),
    );
    return batch.map(({ rule }, index) =>
      !inFile[index] ? 'not in the file' : failed.some((title) => title.includes(rule)) ? 'killed' : 'survived',
    );
  } finally {
    for (const [file, text] of before) writeFileSync(file, text);
  }
}

/** The first of each rule, then the second of each, and so on. */
function batchesOf(mutants: readonly RuleMutant[]): RuleMutant[][] {
  const batches: RuleMutant[][] = [];
  for (const mutant of mutants) {
    const place = batches.findIndex((batch) => batch.every(({ rule }) => rule !== mutant.rule));
    if (place < 0) batches.push([mutant]);
    else batches[place]!.push(mutant);
  }
  return batches;
}

const fates = (existsSync(kept) ? JSON.parse(readFileSync(kept, 'utf8')) : {}) as Record<string, Fate>;
mkdirSync(path.dirname(kept), { recursive: true });
for (const batch of batchesOf(ruleMutants.filter((mutant) => fates[keyOf(mutant)] !== 'killed'))) {
  const found = fatesOf(batch);
  batch.forEach((mutant, index) => {
    fates[keyOf(mutant)] = found[index]!;
    const words = mutant.from.replace(/\s+/g, ' ').slice(0, 70);
    console.log(`${found[index]}: ${mutant.file}, “${mutant.rule}”: ${words}`);
  });
  writeFileSync(kept, JSON.stringify(fates, null, 2));
}
const killed = ruleMutants.filter((mutant) => fates[keyOf(mutant)] === 'killed').length;
console.log(`${killed} of ${ruleMutants.length} killed.`);
process.exitCode = killed === ruleMutants.length ? 0 : 1;
