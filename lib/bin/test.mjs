// npm test: format, lint, types, unit, data-layer and browser tests, in this order, all of them even when one fails. Installs
// what is missing first. Ends with `N passed, N failed`, and fails when anything failed or a runner ran nothing.
import { generate } from './generate.mjs';
import { installIfChanged } from './start/install.mjs';
import { refuseOldNode } from './start/refuse.mjs';
import { installPrograms } from './test/programs.mjs';
import { runBrowserTests, runCheck, runUnitTests } from './test/runners.mjs';

const next = 'node_modules/next/dist/bin/next';

try {
  refuseOldNode();
  installIfChanged();
  installPrograms();
  generate();
  const results = [
    runCheck('Format', ['node_modules/prettier/bin/prettier.cjs', '--check', '--log-level', 'warn', '.']),
    runCheck('Lint', ['node_modules/eslint/bin/eslint.js', '.']),
    // Next writes the types of its routes first; a fresh clone has none.
    runCheck('Types of routes', [next, 'typegen']),
    runCheck('Types', ['node_modules/typescript/bin/tsc', '--noEmit']),
    runUnitTests(),
    runBrowserTests(),
  ];
  report(results);
} catch (error) {
  console.error(`\nThe tests did not run. ${error?.message ?? error}`);
  process.exit(1);
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
  process.exit(sum('failed') === 0 ? 0 : 1);
}
