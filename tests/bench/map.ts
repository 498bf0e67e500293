// The map of a class in Chromium: how long until it is drawn, and how its frames come while it is scrolled, beside an
// empty canvas of the same size in the same page.
//   npm run bench -- map       300 students × 154 pairs
//   MAP_STUDENTS=8 asks for another class
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { chromium as chromiumPath } from '@/lib/bin/test/programs.mjs';
import { applyMigrations } from '@/lib/data/migrate/apply';
import { openDatabase } from '@/lib/data/open';
import { quantile } from '@/shared/stats/quantile';
import { fillClass } from './class/fill';
import { buildForBench, secret, serveForBench } from './class/server';
import { framesWhile, marksOf, type Frames } from './map/frames';

const students = Number(process.env.MAP_STUDENTS ?? 300);
// 14 lines of 11 pairs.
const specimens = 14;
const visits = 5;

export default async function benchMap() {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-bench-'));
  const url = `file:${path.join(folder, 'map.db')}`;
  try {
    if (!process.env.MAP_BUILT) buildForBench();
    await applyMigrations(url);
    const db = openDatabase(url);
    const filled = await fillClass(db, { students, specimens, rounds: 1 }, secret, new Date());
    await db.$disconnect();
    const server = await serveForBench(url, Number(process.env.MAP_PORT ?? 3478));
    const browser = await chromium.launch({
      executablePath: chromiumPath() ?? undefined,
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    });
    try {
      const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
      const [name, ...value] = filled.instructorCookie.split('=');
      await context.addCookies([{ name: name!, value: value.join('='), url: server.origin }]);
      const page = await context.newPage();
      // The runner of this file names functions by a helper of its own, which the page does not have.
      await page.addInitScript('globalThis.__name = (made) => made');
      await visit(page, `${server.origin}/exercises/${filled.exerciseId}/map?round=1&line=all`);
    } finally {
      await browser.close();
      server.stop();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function visit(page: Page, address: string) {
  const drawn: number[] = [],
    fetched: number[] = [];
  for (let turn = 0; turn < visits; turn += 1) {
    await page.goto(address);
    await page.waitForFunction(() => performance.getEntriesByName('map-drawn').length > 0, undefined, {
      timeout: 120_000,
    });
    const { asked, came, done } = await marksOf(page);
    drawn.push(done - came);
    fetched.push(came - asked);
  }
  console.log(`${students} students × ${specimens * 11} pairs, ${visits} visits, Chromium without GPU`);
  console.log(
    `  drawn after the numbers came: median ${ms(quantile(drawn, 0.5))}, most ${ms(Math.max(...drawn))} (wanted: under 200 ms)`,
  );
  console.log(
    `  numbers asked for until read: median ${ms(quantile(fetched, 0.5))}, first (worked out) ${ms(fetched[0]!)}`,
  );
  for (const size of ['its sign', 'its number', 'the whole class at a glance']) {
    await page.getByLabel(size, { exact: true }).check();
    const [map, empty] = [await framesWhile(page, 'map'), await framesWhile(page, 'empty')];
    console.log(
      `  scrolled, a cell shows ${size}: ${words(map)} (wanted: none over 50 ms); an empty canvas: ${words(empty)}; median ratio ${(quantile(map.intervals, 0.5) / quantile(empty.intervals, 0.5)).toFixed(2)}`,
    );
  }
}

const ms = (value: number) => `${value.toFixed(1)} ms`;
const words = ({ intervals, script }: Frames) =>
  `${intervals.length} frames, median ${ms(quantile(intervals, 0.5))}, p95 ${ms(quantile(intervals, 0.95))}, most ${ms(Math.max(...intervals))}, over 50 ms: ${intervals.filter((one) => one > 50).length}, work on the main thread a frame p95 ${ms(quantile(script, 0.95))}, most ${ms(Math.max(...script))}`;
