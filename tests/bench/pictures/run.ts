import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { chromium as browserType, type Browser, type Page } from '@playwright/test';
import { noLooks, type LookName } from '@/shared/line/looks';
import { chromium } from '../../../lib/bin/test/programs.mjs';
import { bundleBench } from '../../e2e/bench/bundle';
import { packOf, propsOf } from '../../e2e/bench/fixture';
import { serveBench, type BenchServer } from '../../e2e/bench/serve';

/**
 * Takes a picture of every way of looking of the bench, narrow and wide, light and dark, to be looked at by a person:
 *   npx tsx tests/bench/pictures/run.ts FOLDER [name]
 * With a name only the pictures of that way. Without database or server of the application.
 */
const [folder, wanted] = process.argv.slice(2);
if (!folder) throw new Error('Say where the pictures go: npx tsx tests/bench/pictures/run.ts FOLDER');

const spacing = [0, -12, -30, 6, 0, -18, 9, 0, -40, 0, -8, 14, 0, -22];
const pack = await packOf('market-avenue');
const offsets = pack.builtIn.map((_, pair) => spacing[pair % spacing.length]!);
const start = { label: 'Lato Regular, 24 px', spacing: { tracking: 10, offsets: pack.builtIn.map(() => 0) } };
const reference = {
  id: 'reference',
  label: 'Reference by A. Tuzla',
  spacing: { tracking: -4, offsets: pack.builtIn.map((_, pair) => -(pair % 5) * 6) },
  tolerances: pack.builtIn.map(() => 10),
};

type Way = {
  name: string;
  given?: BenchServer['props'];
  looks?: readonly LookName[];
  set?: object;
  act?: (page: Page) => Promise<unknown>;
};
const press = (name: string) => (page: Page) => page.getByRole('button', { name, exact: true }).click();

const ways: readonly Way[] = [
  { name: 'plain' },
  { name: 'telling-nothing', given: { tells: 'nothing' } },
  ...(Object.keys(noLooks) as LookName[]).map((look): Way => ({ name: look, looks: [look] })),
  { name: 'white-and-inside', looks: ['white', 'counters'] },
  { name: 'only-white', looks: ['hidden', 'counters'] },
  { name: 'three-on-its-head', looks: ['three', 'head'] },
  { name: 'all-together', looks: ['white', 'counters', 'guides', 'why'], set: { overlay: 'reference' } },
  { name: 'built-in-under', set: { overlay: 'built-in' } },
  { name: 'reference-under', set: { overlay: 'reference' } },
  { name: 'reference-beside', set: { overlay: 'reference', overlayMode: 'beside' } },
  { name: 'run-chosen', set: { chosen: { anchor: 3, head: 6 } } },
  { name: 'start-offered', given: { start } },
  { name: 'smallest-size', given: { smallestSize: { value: 14, unit: 'px' } } },
  { name: 'dark-ground', given: { ground: 'dark' }, looks: ['white', 'counters'] },
  {
    name: 'reference-mode',
    given: { mode: 'reference', tolerances: pack.builtIn.map(() => null), reasons: pack.builtIn.map(() => '') },
  },
  { name: 'points', given: { size: { value: 54, unit: 'pt' } }, act: press('True size on screen') },
  { name: 'keys', act: press('Keys') },
];

const screens = [
  { at: 'wide', width: 1440, height: 1000 },
  { at: 'narrow', width: 390, height: 844 },
];

mkdirSync(folder, { recursive: true });
const server = await serveBench(
  await bundleBench('tests/e2e/bench/entry.tsx'),
  propsOf(pack, { overlays: [reference], spacing: { tracking: 0, offsets } }),
);
const browser = await browserType.launch({
  executablePath: chromium() ?? undefined,
  args: ['--no-sandbox', '--disable-gpu'],
});
for (const way of ways.filter(({ name }) => !wanted || name === wanted)) {
  for (const screen of screens)
    for (const scheme of ['light', 'dark'] as const) await take(browser, way, screen, scheme);
}
await browser.close();
await server.close();

async function take(
  on: Browser,
  way: Way,
  { at, width, height }: (typeof screens)[number],
  colorScheme: 'light' | 'dark',
): Promise<void> {
  const context = await on.newContext({
    viewport: { width, height },
    deviceScaleFactor: at === 'narrow' ? 2 : 1,
    colorScheme,
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  server.props = way.given ?? {};
  await page.goto(server.address);
  await page.locator('canvas[data-view=working]').waitFor();
  await page.evaluate(
    ([looks, set]) => {
      window.benchSession.choose(2);
      for (const look of looks) window.benchSession.toggleLook(look);
      window.benchSession.store.set(set);
    },
    [[...(way.looks ?? [])], way.set ?? {}] as const,
  );
  await way.act?.(page);
  // No button under the pointer: it would be drawn as one that is pointed at.
  await page.mouse.move(0, 0);
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  await page.waitForFunction(() =>
    [...document.querySelectorAll('canvas[data-view]')].every((canvas) => canvas.hasAttribute('data-drawn')),
  );
  // As high as the page, so that nothing has to be painted for the picture alone.
  await page.setViewportSize({
    width,
    height: Math.max(height, await page.evaluate(() => document.documentElement.scrollHeight)),
  });
  writeFileSync(path.join(folder!, `${way.name}-${at}-${colorScheme}.png`), await atRest(page));
  await context.close();
}

/** The painter has a thread of its own: a picture is taken when two in a row are the same. */
async function atRest(page: Page): Promise<Buffer> {
  let last = await page.screenshot();
  for (let tries = 0; tries < 40; tries += 1) {
    await page.waitForTimeout(150);
    const next = await page.screenshot();
    if (next.equals(last)) return next;
    last = next;
  }
  throw new Error('The page does not come to rest.');
}
