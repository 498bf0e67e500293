import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** A check that passes or fails as a whole. */
export function runCheck(name, words) {
  const { status, seconds } = run(name, words);
  return { name, passed: status === 0 ? 1 : 0, failed: status === 0 ? 0 : 1, seconds };
}

export function runUnitTests() {
  const name = 'Unit and data tests';
  return withReport((file) => {
    const { status, seconds } = run(name, [
      'node_modules/vitest/vitest.mjs',
      'run',
      '--reporter=dot',
      '--reporter=json',
      `--outputFile.json=${file}`,
    ]);
    const report = read(file);
    // A file that could not even be loaded has no tests in it to fail.
    const broken = (report?.testResults ?? []).filter(
      (each) => each.status === 'failed' && each.assertionResults.length === 0,
    ).length;
    return counted({
      name,
      seconds,
      status,
      passed: report?.numPassedTests ?? 0,
      failed: (report?.numFailedTests ?? 0) + broken,
      skipped: (report?.numPendingTests ?? 0) + (report?.numTodoTests ?? 0),
    });
  });
}

/** The browser meets the built application, as people do; playwright.config.ts says which server. */
export function runBrowserTests() {
  const name = 'Browser tests';
  return withReport((file) => {
    const { status, seconds } = run(name, ['node_modules/@playwright/test/cli.js', 'test', '--reporter=dot,json'], {
      PLAYWRIGHT_JSON_OUTPUT_NAME: file,
    });
    const report = read(file);
    return counted({
      name,
      status,
      seconds,
      passed: report?.stats.expected ?? 0,
      skipped: report?.stats.skipped ?? 0,
      // A test that passes at the second try only is a failure too.
      failed: (report?.stats.unexpected ?? 0) + (report?.stats.flaky ?? 0) + (report?.errors.length ?? 0),
    });
  });
}

/** Nothing run is a failure, and so is a runner that ended badly without naming a test. */
function counted({ status, ...result }) {
  const silent = result.passed + result.failed === 0 || (status !== 0 && result.failed === 0);
  return silent ? { ...result, failed: result.failed + 1 } : result;
}

function run(name, words, environment = {}) {
  console.log(`\n${name} …`);
  const begun = performance.now();
  const { status } = spawnSync(process.execPath, words, { stdio: 'inherit', env: { ...process.env, ...environment } });
  return { status, seconds: (performance.now() - begun) / 1000 };
}

function withReport(work) {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-report-'));
  try {
    return work(path.join(folder, 'report.json'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const read = (file) => (existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null);
