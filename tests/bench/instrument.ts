import { chromium as browserType, type CDPSession, type Page } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { setTimeout } from 'node:timers/promises';
import { gzipSync } from 'node:zlib';
import { packSchema } from '@/shared/schemas/pack';
import { chromium } from '../../lib/bin/test/programs.mjs';
import { bundleBench } from '../e2e/bench/bundle';
import { serveBench } from '../e2e/bench/serve';
import { traceChanges } from './instrument/trace';

const changes = Number(process.env.INSTRUMENT_CHANGES ?? 500);
/** From one change to the next, ms: as a held key repeats, and as keys are pressed one at a time with pauses. */
const HELD = 34;
const APART = 300;

/**
 * What a change on the bench costs in Chromium: a line of 24 letters, five smaller sizes, all overlays on; beside it a
 * bare page that only writes a number per key, in the same run. Times are of this machine, without a graphics card.
 */
export default async function instrument(): Promise<void> {
  const pack = packSchema.parse(JSON.parse(await readFile('tests/fixtures/packs/market-avenue.json', 'utf8')));
  const server = await serveBench(await bundleBench('tests/e2e/bench/entry.tsx'), {
    mode: 'work',
    pack,
    size: { value: 64, unit: 'px' },
    ground: 'light',
    spacing: { tracking: 0, offsets: pack.builtIn.map(() => 0) },
    version: 0,
    draftId: 'd',
    personKey: 'p',
    tells: 'everything',
    save: '/save',
    ladder: [48, 36, 24, 18, 12].map((value) => ({ value, unit: 'px' as const })),
  });
  const browser = await browserType.launch({
    executablePath: chromium() ?? undefined,
    args: ['--no-sandbox', '--disable-gpu'],
  });
  const results: Record<string, unknown> = { letters: pack.letters.length, changes };
  for (const throttle of [1, 4]) {
    const page = await browser.newPage({ viewport: { width: 1280, height: 1000 } });
    const cdp = await page.context().newCDPSession(page);
    await page.setContent(
      '<p tabindex="0" data-gap="9">0</p><script>let n = 0; addEventListener("keydown", () => { document.querySelector("p").textContent = ++n; });</script>',
    );
    await cdp.send('Emulation.setCPUThrottlingRate', { rate: throttle });
    results[`bare page, keys, throttled ×${throttle}`] = await measure(page, cdp, () => pressKeys(page, changes, HELD));
    await cdp.send('Emulation.setCPUThrottlingRate', { rate: 1 });
    await page.goto(server.address);
    await page.locator('canvas[data-view=working][data-drawn=thread]').waitFor();
    await page.evaluate(() => {
      for (const look of ['white', 'counters', 'guides', 'why'] as const) window.benchSession.toggleLook(look);
      window.benchSession.store.set({ overlay: 'built-in' });
    });
    await cdp.send('Emulation.setCPUThrottlingRate', { rate: throttle });
    results[`keys, throttled ×${throttle}`] = await measure(page, cdp, () => pressKeys(page, changes, HELD));
    results[`keys apart, throttled ×${throttle}`] = await measure(page, cdp, () =>
      pressKeys(page, Math.ceil(changes / 5), APART),
    );
    results[`drag, throttled ×${throttle}`] = await measure(page, cdp, () => drag(page));
    await page.close();
  }
  const own = await bundleBench('app/_bench/workbench.tsx', false);
  const kilobytes = (text: string) => Math.round(gzipSync(text, { level: 9 }).length / 100) / 10;
  const parts = (later: boolean) => [...own.parts].filter(([name]) => own.later.has(name) === later);
  const sum = (texts: readonly string[]) => texts.reduce((all, text) => all + kilobytes(text), 0);
  results['own JavaScript, kB gzip'] = {
    page: sum([own.js, ...parts(false).map(([, text]) => text)]),
    later: sum(parts(true).map(([, text]) => text)),
    painter: kilobytes(own.worker),
  };
  console.log(JSON.stringify(results, null, 2));
  await browser.close();
  await server.close();
}

async function measure(page: Page, cdp: CDPSession, act: () => Promise<void>) {
  await page.evaluate(() => {
    const found = { events: [] as number[] };
    Object.assign(window, { found });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries())
        if (['keydown', 'pointermove'].includes(entry.name)) found.events.push(entry.duration);
    }).observe({ type: 'event', durationThreshold: 16 } as PerformanceObserverInit);
  });
  const { work, tasks } = await traceChanges(cdp, act);
  const { events } = await page.evaluate(() => (window as unknown as { found: { events: number[] } }).found);
  return {
    changes: work.length,
    'main-thread work, ms': spread(work),
    // The browser reports events slower than 16 ms only, in steps of 8 ms; the others count as 16.
    'event to paint p95, ms': quantile(
      [...events, ...new Array<number>(Math.max(0, work.length - events.length)).fill(16)],
      0.95,
    ),
    'longest task, ms': round(Math.max(...tasks)),
    'tasks over 50 ms': tasks.filter((task) => task > 50).length,
  };
}

async function pressKeys(page: Page, times: number, pace: number): Promise<void> {
  await page.locator('[data-gap="9"]').focus();
  for (let count = 0; count < times; count += 1) {
    await page.keyboard.press(count % 20 < 10 ? 'ArrowRight' : 'ArrowLeft');
    await setTimeout(pace);
  }
}

async function drag(page: Page): Promise<void> {
  const box = (await page.locator('[data-gap="4"]').boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let count = 0; count < changes; count += 1) {
    await page.mouse.move(x + 5 + (count % 40), y);
    await setTimeout(HELD);
  }
  await page.mouse.up();
}

function spread(values: number[]) {
  return { p50: round(quantile(values, 0.5)), p95: round(quantile(values, 0.95)), most: round(Math.max(...values)) };
}

/** Nearest rank. */
function quantile(values: number[], share: number): number {
  return [...values].sort((a, b) => a - b)[Math.max(0, Math.ceil(share * values.length) - 1)] ?? NaN;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
