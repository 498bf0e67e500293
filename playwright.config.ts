import { cpus } from 'node:os';
import { defineConfig } from '@playwright/test';
import { chromium } from './lib/bin/test/programs.mjs';

// Each checkout on a machine can have its own; the servers of the workers stand ten apart, what a test starts between them.
const first = Number(process.env.E2E_PORT ?? 3460);
const workers = Number(process.env.E2E_WORKERS ?? Math.min(2, cpus().length));
// This file is read again in each worker, which finds its own place there.
const own = first + 10 * Number(process.env.TEST_PARALLEL_INDEX ?? 0);
const last = first + 10 * (workers - 1);

export default defineConfig({
  projects: [
    { name: 'application', testDir: 'tests/e2e', testIgnore: 'bench/**' },
    // The bench alone, as its own playwright.config.ts has it.
    { name: 'bench', testDir: 'tests/e2e/bench', use: { viewport: { width: 1280, height: 900 } } },
  ],
  // Each worker has a server and a demo of its own, and files go to whichever is free. The demo's course is one for all tests
  // of a worker: those that change it make an exercise of their own.
  workers,
  timeout: 120_000,
  expect: { timeout: 15_000 },
  forbidOnly: true,
  retries: 0,
  use: {
    baseURL: `http://127.0.0.1:${own}`,
    screenshot: 'only-on-failure',
    // A trace of what failed costs every test a quarter of its time: `npx playwright test NAME --trace on` makes one.
    trace: 'off',
    launchOptions: {
      executablePath: chromium() ?? undefined,
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        // No threads of the engine's own for compiling and collecting: two workers keep two cores busy as it is, and it
        // saves a fifth of the browser's processor.
        '--js-flags=--single-threaded',
      ],
    },
  },
  webServer: {
    command: `node tests/e2e/start.mjs ${first} ${workers}`,
    url: `http://127.0.0.1:${last}/sign-in`,
    timeout: 600_000,
    stdout: 'pipe',
    gracefulShutdown: { signal: 'SIGTERM', timeout: 5_000 },
  },
});
