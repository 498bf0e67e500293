import { expect, type Page } from '@playwright/test';
import { axeOn } from '../axe';
import { onPage, packOf, propsOf, test } from './fixture';

/** Controls and drawings of the bench that reach out of the window, by name. */
const outOfView = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main :is(button, input, select, a, summary, canvas)')].flatMap(
      (one) => {
        const { left, top, right, bottom, width } = one.getBoundingClientRect();
        const inside = left >= -1 && top >= -1 && right <= innerWidth + 1 && bottom <= innerHeight + 1;
        return width === 0 || inside ? [] : [one.ariaLabel ?? one.dataset.view ?? one.textContent];
      },
    ),
  );

const scrolls = (page: Page) =>
  page.evaluate(() => ({
    down: document.documentElement.scrollHeight > innerHeight,
    across: document.documentElement.scrollWidth > innerWidth,
  }));

/** Whether the ink of the working view keeps clear of both ends of its canvas. */
const inkClearOfEnds = (page: Page) =>
  page.locator('canvas[data-view=working]').evaluate((view: HTMLCanvasElement) => {
    const context = Object.assign(document.createElement('canvas'), {
      width: view.width,
      height: view.height,
    }).getContext('2d')!;
    context.drawImage(view, 0, 0);
    const { data } = context.getImageData(0, 0, view.width, view.height);
    let [first, last] = [view.width, 0];
    for (let at = 3; at < data.length; at += 4) {
      if (data[at]! < 24) continue;
      const x = ((at - 3) / 4) % view.width;
      first = Math.min(first, x);
      last = Math.max(last, x);
    }
    return last > first && first > 8 && last < view.width - 8;
  });

for (const [width, height] of [
  [1280, 720],
  [1280, 900],
  [1920, 1080],
] as const)
  for (const mode of ['work', 'reference'] as const)
    test(`at ${width} × ${height} everything of a ${mode} bench is in view and the page does not scroll`, async ({
      page,
      server,
      open,
    }) => {
      await page.setViewportSize({ width, height });
      server.props = {
        mode,
        ...(mode === 'reference' && { tolerances: new Array(8).fill(null), reasons: new Array(8).fill('') }),
      };
      await open();
      expect(await scrolls(page)).toEqual({ down: false, across: false });
      expect(await outOfView(page)).toEqual([]);
      // Also while it tells all it can: a gap that was tried, ways of looking with their legend, another spacing beside.
      await page.keyboard.press('PageUp');
      for (const key of ['w', 'c', 'y']) await page.keyboard.press(key);
      await page.getByLabel('Compare with').selectOption('Built-in');
      await page.getByRole('combobox', { name: 'How', exact: true }).selectOption('beside it');
      await expect(page.locator('canvas[data-view=beside]')).toBeVisible();
      await page.waitForTimeout(300);
      expect(await scrolls(page)).toEqual({ down: false, across: false });
      expect(await outOfView(page)).toEqual([]);
    });

test('a long line is fitted and never cut, also once it was opened; its scale is told and true size is one key away', async ({
  page,
  server,
  open,
}) => {
  await page.setViewportSize({ width: 1280, height: 720 });
  server.props = { size: { value: 300, unit: 'px' }, tells: 'nothing' };
  await open();
  await expect(page.getByText(/300.px, shown here at \d+%/)).toBeVisible();
  await expect.poll(() => inkClearOfEnds(page)).toBe(true);
  await page.getByRole('textbox', { name: 'Tracking' }).fill('120');
  await page.keyboard.press('Enter');
  await expect.poll(() => inkClearOfEnds(page)).toBe(true);
  await page.locator('[data-gap="0"]').focus();
  await page.keyboard.press('u');
  // What is larger than the sheet is panned, and the whole line is over it, small.
  await expect(page.locator('canvas[data-view=true]')).toBeVisible();
  await expect.poll(() => inkClearOfEnds(page)).toBe(false);
  await page.keyboard.press('u');
  await expect.poll(() => inkClearOfEnds(page)).toBe(true);
});

test('a working view set to twice shows its letters whole, with or without the ruler', async ({
  page,
  server,
  open,
}) => {
  await page.setViewportSize({ width: 1280, height: 720 });
  const shown = async (more: object) => {
    server.props = more;
    await open();
    const view = page.locator('canvas[data-view=working]');
    await expect(view).toBeInViewport({ ratio: 0.97 });
    return (await view.boundingBox())!.height;
  };
  const usual = await shown({ tells: 'nothing' });
  const twice = await shown({ tells: 'nothing', accommodations: { workingView: 2 } });
  // Each canvas has 22 px over and under the letters.
  expect((twice - 44) / (usual - 44)).toBeCloseTo(2, 1);
  await expect(page.locator('canvas[data-view=true]')).toBeInViewport({ ratio: 0.97 });
  expect(await shown({ tells: 'everything', accommodations: { workingView: 2, rulerOfOwn: true } })).toBe(twice);
  expect(await scrolls(page)).toEqual({ down: false, across: false });
});

test('keys work before anything was chosen', async ({ page, open }) => {
  await open();
  await page.keyboard.press('j');
  await page.keyboard.press('ArrowRight');
  expect((await onPage(page)).offsets.slice(0, 3)).toEqual([0, 5, 0]);
  await page.keyboard.press('f');
  await page.keyboard.press('ArrowLeft');
  expect((await onPage(page)).offsets.slice(0, 3)).toEqual([-5, 5, 0]);
});

test('on a phone the line and what changes it stay in view while the rest is read', async ({
  browser,
  server,
  open,
}) => {
  const context = await browser.newContext({ hasTouch: true, viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  server.props = propsOf(await packOf('volta-yawl'));
  await open(page);
  expect((await scrolls(page)).across).toBe(false);
  const stay = [
    page.locator('canvas[data-view=true]'),
    page.locator('canvas[data-view=working]'),
    page.getByRole('button', { name: '5 closer', exact: true }),
    page.getByRole('textbox', { name: 'Offset' }),
  ];
  for (const one of stay) await expect(one).toBeInViewport({ ratio: 0.9 });
  await page.evaluate(() => window.scrollTo(0, document.documentElement.scrollHeight));
  for (const one of stay) await expect(one).toBeInViewport({ ratio: 0.9 });
  await page.getByRole('button', { name: 'Ways of looking' }).click();
  await page.getByRole('button', { name: 'White between' }).click();
  await expect(page.getByRole('button', { name: 'White between' })).toHaveAttribute('aria-pressed', 'true');
  await expect(stay[1]!).toBeInViewport({ ratio: 0.9 });
  expect(await axeOn(page)).toEqual([]);
  await page.getByRole('button', { name: 'Smaller sizes' }).click();
  await expect(page.getByRole('group', { name: 'Smaller sizes' })).toBeInViewport();
  await context.close();
});
