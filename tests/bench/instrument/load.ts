import { chromium as browserType, type BrowserContext } from '@playwright/test';
import { chromium } from '../../../lib/bin/test/programs.mjs';
import { students } from '../../../prisma/seed/people';

/**
 * How soon the line of a bench is seen and can be worked on at 1.6 Mbit/s and 150 ms, cold and warm, median of some
 * visits:
 *   npx tsx tests/bench/instrument/load.ts http://127.0.0.1:3000 [visits, 5]
 * The server has to run already (`npm start`, demo). Seen: the line is laid out in a frame; usable: the bench has drawn
 * it and takes keys.
 */
const student = students[0]!;
const [address = 'http://127.0.0.1:3000', visits = '5'] = process.argv.slice(2);
/** Runs in the page, so it is text: what carries code there names functions by a helper that a page does not have. */
const lookout = `{
  const times = (window.times = { seen: 0, usable: 0 });
  const look = () => {
    const drawn = document.querySelector('canvas[data-view=working][data-drawn]');
    const line = drawn ?? document.querySelector('figure svg');
    if (!times.seen && line && line.getBoundingClientRect().width > 0) times.seen = performance.now();
    if (drawn) times.usable = performance.now();
    else requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}`;

const browser = await browserType.launch({
  executablePath: chromium() ?? undefined,
  args: ['--no-sandbox', '--disable-gpu'],
});
const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
const bench = await signIn(context);
const state = await context.storageState();
const found = { cold: [] as Times[], warm: [] as Times[] };
for (let visit = 0; visit < Number(visits); visit += 1) {
  const fresh = await browser.newContext({ viewport: { width: 1280, height: 900 }, storageState: state });
  found.cold.push(await load(fresh));
  found.warm.push(await load(fresh));
  await fresh.close();
}
console.log(JSON.stringify({ visits: Number(visits), cold: median(found.cold), warm: median(found.warm) }, null, 2));
await browser.close();

type Times = { seen: number; usable: number };

async function signIn(on: BrowserContext): Promise<string> {
  const page = await on.newPage();
  await page.goto(`${address}/sign-in`);
  await page.getByLabel('E-mail address').fill(student.email);
  await page.getByLabel('Password').fill(student.password);
  await page.getByRole('button', { name: /Sign in/ }).click();
  await page.waitForURL(/courses/);
  await page.getByRole('link', { name: 'Lettering for display' }).click();
  await page.getByRole('link', { name: 'Signs for a harbour' }).first().click();
  // The guided first line precedes the first bench.
  await page.locator('a[href*="/bench/"]').first().click();
  const leave = page.getByRole('button', { name: 'Leave the guide' });
  await page.locator('canvas[data-view=working][data-drawn]').waitFor();
  if (await leave.isVisible()) await leave.click();
  await page.locator('canvas[data-view=working][data-drawn]').waitFor();
  const url = page.url();
  await page.close();
  return url;
}

async function load(on: BrowserContext): Promise<Times> {
  const page = await on.newPage();
  const cdp = await on.newCDPSession(page);
  await cdp.send('Network.enable');
  await cdp.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: 150,
    downloadThroughput: 1_600_000 / 8,
    uploadThroughput: 750_000 / 8,
  });
  await page.addInitScript({ content: lookout });
  await page.goto(bench, { waitUntil: 'commit' });
  await page.waitForFunction(() => (window as unknown as { times: Times }).times.usable > 0, null, { timeout: 60_000 });
  const times = await page.evaluate(() => (window as unknown as { times: Times }).times);
  await page.close();
  return times;
}

function median(times: Times[]): Times {
  const middle = (values: number[]) => Math.round(values.sort((a, b) => a - b)[Math.floor(values.length / 2)]!);
  return { seen: middle(times.map(({ seen }) => seen)), usable: middle(times.map(({ usable }) => usable)) };
}
