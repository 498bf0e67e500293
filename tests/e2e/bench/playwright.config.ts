import { defineConfig } from '@playwright/test';
import { chromium } from '../../../lib/bin/test/programs.mjs';

/** The bench alone, on a page of its own: no database, no Next. */
export default defineConfig({
  testDir: '.',
  workers: 1,
  timeout: 30_000,
  reporter: [['list']],
  outputDir: '../../../test-results/bench',
  use: {
    browserName: 'chromium',
    viewport: { width: 1280, height: 900 },
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
});
