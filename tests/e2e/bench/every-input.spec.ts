import { expect, type Page } from '@playwright/test';
import { onPage, placeOfGap, test } from './fixture';

/** What the working view shows, as the screen has it. */
const picture = async (page: Page) => (await page.locator('canvas[data-view=working]').screenshot()).toString('base64');

test('a pen drags a gap as a mouse does', async ({ page, open }) => {
  await open();
  const cdp = await page.context().newCDPSession(page);
  const { x, y } = await placeOfGap(page, 2);
  const pen = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', at: number) =>
    cdp.send('Input.dispatchMouseEvent', {
      type,
      x: at,
      y,
      pointerType: 'pen',
      force: 0.5,
      button: 'left',
      buttons: type === 'mouseReleased' ? 0 : 1,
      clickCount: 1,
    });
  await pen('mousePressed', x);
  for (const dx of [5, 12, 20]) await pen('mouseMoved', x + dx);
  await pen('mouseReleased', x + 20);
  const { offsets } = await onPage(page);
  expect(offsets[2]).toBeGreaterThan(20);
  expect(offsets.filter((offset) => offset !== 0)).toHaveLength(1);
});

test('a tap chooses and changes nothing; a finger dragged up and down leaves the line alone', async ({
  browser,
  open,
}) => {
  const context = await browser.newContext({ hasTouch: true, viewport: { width: 390, height: 800 } });
  const page = await context.newPage();
  await open(page);
  const { x, y } = await placeOfGap(page, 1);
  await page.touchscreen.tap(x, y);
  expect(await page.evaluate(() => window.benchSession.store.get().chosen)).toEqual({ anchor: 1, head: 1 });
  expect((await onPage(page)).offsets).toEqual(new Array(8).fill(0));
  await context.close();
});

test('on its head and mirrored the line still follows the hand', async ({ page, open }) => {
  await open();
  await page.getByRole('button', { name: 'Mirrored' }).click();
  await expect.poll(async () => (await placeOfGap(page, 1)).x).toBeGreaterThan((await placeOfGap(page, 3)).x);
  const { x, y } = await placeOfGap(page, 1);
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (const dx of [-5, -15, -30]) await page.mouse.move(x + dx, y);
  await page.mouse.up();
  // In this mirrored line everything after the gap is to its left, so a pull to the left opens it.
  expect((await onPage(page)).offsets[1]).toBeGreaterThan(50);
});

test('for a screen reader each gap is a slider with its words, and can be moved by it', async ({ page, open }) => {
  await open();
  const cdp = await page.context().newCDPSession(page);
  const { nodes } = await cdp.send('Accessibility.getFullAXTree');
  const names = nodes.filter(({ role }) => role?.value === 'slider').map(({ name }) => String(name?.value));
  expect(names).toHaveLength(8);
  expect(names.slice(0, 2)).toEqual(['gap between capital V and o', 'gap between o and l']);
  for (const slider of await page.locator('[data-gap]').all())
    await expect(slider).toHaveAttribute(
      'aria-valuetext',
      /^offset 0, total (0|minus \d+|plus \d+)\. (About|A little|Clearly|Much|This line has too few)/,
    );
  // Assistive technology sets the value itself, without keys.
  const second = page.getByRole('slider', { name: 'gap between o and l' });
  await second.fill('-15');
  await expect(second).toHaveAttribute('aria-valuetext', /^offset minus 15, total minus \d+/);
  expect((await onPage(page)).offsets[1]).toBe(-15);
});

test('every way of looking shows another picture, and all go together', async ({ page, open }) => {
  await open();
  await page.locator('[data-gap="2"]').focus();
  const plain = await picture(page);
  const seen = new Set([plain]);
  const looks = page.getByRole('group', { name: 'Look at it' }).getByRole('button');
  await expect(looks.first()).toBeVisible();
  const names = await looks.allTextContents();
  expect(names).toEqual([
    'White between',
    'White inside',
    'Letters hidden',
    'Three letters',
    'Blurred',
    'On its head',
    'Mirrored',
    'Opposite ground',
    'Guide lines',
    'Show me why',
  ]);
  for (const name of names) {
    const button = looks.filter({ hasText: name });
    await button.click();
    await expect
      .poll(
        async () => {
          const now = await picture(page);
          return seen.has(now) ? 'seen before' : seen.add(now) && 'new';
        },
        { message: name },
      )
      .toBe('new');
    await button.click();
  }
  for (const name of names) await looks.filter({ hasText: name }).click();
  for (const name of names) await expect(looks.filter({ hasText: name })).toHaveAttribute('aria-pressed', 'true');
  await expect.poll(async () => seen.has(await picture(page))).toBe(false);
});

test('on the opposite ground the letters are as plain to see as on their own, there and back', async ({
  page,
  open,
}) => {
  await open();
  const button = page.getByRole('button', { name: 'Opposite ground' });
  // Ink covers far less of the working view than ground does: the middle value is the ground's.
  for (const ground of [255, 0, 255]) {
    await expect
      .poll(async () => {
        const { darkest, lightest, middle } = await greysOf(page);
        return { apart: lightest - darkest > 200, ground: Math.abs(middle - ground) < 40 };
      })
      .toEqual({ apart: true, ground: true });
    await button.click();
  }
});

test('a full device says so, and the change still goes to the server', async ({ page, server, open }) => {
  await page.addInitScript(() => {
    const set = Storage.prototype.setItem;
    Storage.prototype.setItem = function (this: Storage, key: string, value: string) {
      if ((window as { deviceIsFull?: boolean }).deviceIsFull) throw new DOMException('full', 'QuotaExceededError');
      set.call(this, key, value);
    };
  });
  await open();
  await page.evaluate(() => {
    (window as { deviceIsFull?: boolean }).deviceIsFull = true;
  });
  server.behave('silent');
  await page.locator('[data-gap="0"]').focus();
  await page.keyboard.press('PageDown');
  await expect(
    page.getByText('This device has no room to keep changes. Leave this page open until it says that all is saved.'),
  ).toBeVisible();
  server.behave('well');
  await expect(page.getByText('All changes are saved.')).toBeVisible({ timeout: 60_000 });
  expect(server.toy().kept().document.offsets[0]).toBe(-20);
});

test('a page that is zoomed says so', async ({ page, open }) => {
  await open();
  const cdp = await page.context().newCDPSession(page);
  // What the browser's own zoom does to a page: fewer CSS px on the same screen, each of them larger.
  await cdp.send('Emulation.setDeviceMetricsOverride', {
    width: 1024,
    height: 720,
    deviceScaleFactor: 1.25,
    mobile: false,
  });
  await expect(page.getByText(/The page has been zoomed to 125%/)).toBeVisible();
});

test('undo and redo reach back through the sitting after a reload', async ({ page, open }) => {
  await open();
  for (const gap of [0, 1, 2]) {
    await page.locator(`[data-gap="${gap}"]`).focus();
    await page.keyboard.press('PageUp');
  }
  await page.keyboard.press('Control+z');
  await page.reload();
  await page.locator('canvas[data-view=working][data-drawn]').waitFor();
  expect((await onPage(page)).offsets.slice(0, 3)).toEqual([20, 20, 0]);
  await page.getByRole('button', { name: 'Redo' }).click();
  expect((await onPage(page)).offsets.slice(0, 3)).toEqual([20, 20, 20]);
  for (let step = 0; step < 3; step += 1) await page.getByRole('button', { name: 'Undo' }).click();
  expect((await onPage(page)).offsets).toEqual(new Array(8).fill(0));
});

/** Greys of the working view as it is seen, 0 black to 255 white. */
async function greysOf(page: Page): Promise<{ darkest: number; lightest: number; middle: number }> {
  return page.evaluate(
    async (base64) => {
      const image = await createImageBitmap(
        new Blob([Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0))], { type: 'image/png' }),
      );
      const context = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
      context.drawImage(image, 0, 0);
      const greys = context
        .getImageData(0, 0, image.width, image.height)
        .data.filter((_, place) => place % 4 === 1)
        .sort();
      return { darkest: greys[0]!, lightest: greys[greys.length - 1]!, middle: greys[Math.floor(greys.length / 2)]! };
    },
    await picture(page),
  );
}
