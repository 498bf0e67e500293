import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** A check that passes or fails as a whole. */
export async function runCheck(name, words) {
  const { status, seconds } = await run(name, words);
  return { name, passed: status === 0 ? 1 : 0, failed: status === 0 ? 0 : 1, seconds };
}

/** Runs beside others; its output is printed when it has ended, and only if it failed. */
export async function runStep(name, words) {
  const begun = performance.now();
  const output = [];
  const child = spawn(process.execPath, words, { stdio: ['ignore', 'pipe', 'pipe'] });
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => output.push(String(text)));
  const status = await ended(child);
  console.log(`\n${name}: ${status === 0 ? 'done' : 'failed'} (${Math.round((performance.now() - begun) / 1000)} s)`);
  if (status !== 0) console.log(output.join(''));
}

export function runUnitTests() {
  const name = 'Unit and data tests';
  return withReport(async (file) => {
    const { status, seconds } = await run(name, [
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
export function runBrowserTests(environment) {
  const name = 'Browser tests';
  return withReport(async (file) => {
    const words = ['node_modules/@playwright/test/cli.js', 'test', '--reporter=dot,json'];
    const { status, seconds } = await run(name, words, {
      ...environment,
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

async function run(name, words, environment = {}) {
  console.log(`\n${name} …`);
  const begun = performance.now();
  const child = spawn(process.execPath, words, { stdio: 'inherit', env: { ...process.env, ...environment } });
  const status = await ended(child);
  return { status, seconds: (performance.now() - begun) / 1000 };
}

/** @returns {Promise<number>} how it ended; 1 when it could not be started or was killed */
const ended = (child) =>
  new Promise((resolve) => {
    child.once('error', () => resolve(1));
    child.once('exit', (code) => resolve(code ?? 1));
  });

async function withReport(work) {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-report-'));
  try {
    return await work(path.join(folder, 'report.json'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const read = (file) => (existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null);
