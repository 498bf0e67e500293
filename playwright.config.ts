import { defineConfig } from '@playwright/test';
import { chromium } from './lib/bin/test/programs.mjs';

// Each checkout on a machine can have its own.
const port = Number(process.env.E2E_PORT ?? 3460);

export default defineConfig({
  projects: [
    { name: 'application', testDir: 'tests/e2e', testIgnore: 'bench/**' },
    // The bench alone, as its own playwright.config.ts has it.
    { name: 'bench', testDir: 'tests/e2e/bench', use: { viewport: { width: 1280, height: 900 } } },
  ],
  // The demo's course is one for all: tests that change it make an exercise of their own.
  workers: 1,
  timeout: 120_000,
  expect: { timeout: 15_000 },
  forbidOnly: true,
  retries: 0,
  use: {
    baseURL: `http://127.0.0.1:${port}`,
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
      ],
    },
  },
  webServer: {
    command: `node tests/e2e/start.mjs ${port}`,
    url: `http://127.0.0.1:${port}/sign-in`,
    timeout: 600_000,
    stdout: 'pipe',
    gracefulShutdown: { signal: 'SIGTERM', timeout: 5_000 },
  },
});
