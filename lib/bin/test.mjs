// npm test: format, lint, unused code, types, unit, data-layer and browser tests, all of them even when one fails.
// Installs what is missing first. Ends with `N passed, N failed`, and fails when anything failed or a runner ran
// nothing.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { generate } from './generate.mjs';
import { installIfChanged } from './start/install.mjs';
import { refuseOldNode } from './start/refuse.mjs';
import { installPrograms } from './test/programs.mjs';
import { runBrowserTests, runCheck, runStep, runUnitTests } from './test/runners.mjs';

const modules = (program) => `node_modules/${program}`;
const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-test-'));
const demo = path.join(folder, 'demo.db');

try {
  refuseOldNode();
  installIfChanged();
  installPrograms();
  generate();
  report(await runAll());
} catch (error) {
  console.error(`\nThe tests did not run. ${error?.message ?? error}`);
  process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/**
 * Two things at a time, since most of them keep one core busy: while the application is built and its demo filled, the
 * code is checked. Then unit tests in two workers, then browser tests in two, each with a server of its own.
 */
async function runAll() {
  // Next writes the types of its routes; a fresh clone has none, and a build writes them too.
  const routes = await runCheck('Types of routes', [modules('next/dist/bin/next'), 'typegen']);
  // What fails here fails again, and is counted, where the browser tests start their servers.
  const building = runStep('Build and demo', ['tests/e2e/prepare.mjs', demo]);
  const checks = [];
  const cached = ['--cache', '--cache-location'];
  for (const [name, words] of [
    ['Types', [modules('typescript-7/bin/tsc'), '--noEmit']],
    ['Nothing unused', [modules('knip/bin/knip.js'), '--no-progress', '--no-config-hints']],
    ['Lint', [modules('eslint/bin/eslint.js'), ...cached, 'node_modules/.cache/eslint/', '.']],
    [
      'Format',
      [
        modules('prettier/bin/prettier.cjs'),
        '--check',
        ...cached,
        'node_modules/.cache/prettier',
        '--log-level',
        'warn',
        '.',
      ],
    ],
  ])
    checks.push(await runCheck(name, words));
  const unit = await runUnitTests();
  await building;
  return [routes, ...checks, unit, await runBrowserTests({ E2E_DEMO: demo })];
}

function report(results) {
  console.log('');
  for (const { name, passed, failed, skipped = 0, seconds } of results) {
    console.log(
      `${name}: ${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ''} (${Math.round(seconds)} s)`,
    );
  }
  const sum = (key) => results.reduce((total, result) => total + result[key], 0);
  console.log(`\n${sum('passed')} passed, ${sum('failed')} failed`);
  process.exitCode = sum('failed') === 0 ? 0 : 1;
}
