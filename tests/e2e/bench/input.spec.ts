import { expect } from '@playwright/test';
import { onPage, placeOfGap, test } from './fixture';

const saved = 'All changes are saved.';

test('a gap is dragged: it follows the hand exactly, everything right of it moves, and it is one step of undo', async ({
  page,
  server,
  open,
}) => {
  await open();
  const before = await Promise.all([0, 1, 2, 3].map((gap) => placeOfGap(page, gap)));
  await page.mouse.move(before[1]!.x, before[1]!.y);
  await page.mouse.down();
  for (const dx of [4, 9, 20, 30]) await page.mouse.move(before[1]!.x + dx, before[1]!.y);
  await page.mouse.up();
  const em = await page.evaluate(
    () => document.querySelector<HTMLCanvasElement>('canvas[data-view=working]')!.clientWidth,
  );
  const { offsets } = await onPage(page);
  expect(em).toBeGreaterThan(0);
  expect(offsets[1]).toBeGreaterThan(50);
  expect(offsets.filter((offset) => offset !== 0)).toHaveLength(1);
  // The sliders over the gaps follow once the pointer rests.
  await expect(async () => {
    const after = await Promise.all([0, 2, 3].map((gap) => placeOfGap(page, gap)));
    expect(after[0]!.x).toBeCloseTo(before[0]!.x, 0);
    // 30 px of the pointer are 30 px of line, to the rounding of an offset to whole thousandths.
    expect(after[1]!.x - before[2]!.x).toBeCloseTo(30, 0);
    expect(after[2]!.x - before[3]!.x).toBeCloseTo(30, 0);
  }).toPass();
  await expect(page.getByText(saved)).toBeVisible();
  expect(server.toy().kept().document.offsets).toEqual(offsets);
  await page.keyboard.press('Control+z');
  expect((await onPage(page)).offsets[1]).toBe(0);
  await page.keyboard.press('Control+Shift+z');
  expect((await onPage(page)).offsets).toEqual(offsets);
});

test('Escape in the middle of a drag leaves no trace', async ({ page, server, open }) => {
  await open();
  const { x, y } = await placeOfGap(page, 2);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 40, y);
  expect((await onPage(page)).offsets[2]).toBeGreaterThan(0);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  expect((await onPage(page)).offsets[2]).toBe(0);
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
  expect(server.requests).toBe(0);
});

test('the keyboard alone does the whole job', async ({ page, server, open }) => {
  await open();
  // Tab reaches the chosen gap before any control.
  await page.keyboard.press('Tab');
  await expect(page.getByRole('slider', { name: 'gap between capital V and o' })).toBeFocused();
  for (const key of ['ArrowRight', 'ArrowRight', 'ArrowUp', 'PageDown']) await page.keyboard.press(key);
  // 5 + 5 + 1 − 20
  expect((await onPage(page)).offsets[0]).toBe(-9);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('slider', { name: 'gap between o and l' })).toBeFocused();
  await page.keyboard.type('-12');
  await page.keyboard.press('Enter');
  expect((await onPage(page)).offsets[1]).toBe(-12);
  await expect(page.getByRole('slider', { name: 'gap between o and l' })).toBeFocused();
  await expect(page.getByRole('slider', { name: 'gap between o and l' })).toHaveAttribute(
    'aria-valuetext',
    /^offset minus 12, total minus \d+/,
  );
  await page.keyboard.press('j');
  await page.keyboard.press('Shift+J');
  await page.keyboard.press('ArrowDown');
  expect((await onPage(page)).offsets.slice(2, 4)).toEqual([-1, -1]);
  await page.keyboard.press('Delete');
  await page.keyboard.press('End');
  await page.keyboard.press('ArrowLeft');
  expect((await onPage(page)).offsets).toEqual([-9, -12, 0, 0, 0, 0, 0, -5]);
  await expect(page.getByText(saved)).toBeVisible();
  expect(server.toy().kept().document.offsets).toEqual([-9, -12, 0, 0, 0, 0, 0, -5]);
});

test('a key held down is one step of undo', async ({ page, open }) => {
  await open();
  await page.keyboard.press('Tab');
  for (let repeat = 0; repeat < 6; repeat += 1) await page.keyboard.down('ArrowRight');
  await page.keyboard.up('ArrowRight');
  expect((await onPage(page)).offsets[0]).toBe(30);
  await page.keyboard.press('Control+z');
  expect((await onPage(page)).offsets[0]).toBe(0);
});

test('a number that is none stays in the field with the reason, and nothing changes', async ({ page, open }) => {
  await open();
  const field = page.getByRole('textbox', { name: 'Offset' });
  await field.fill('12.5');
  await field.press('Enter');
  await expect(page.getByRole('alert')).toHaveText('“12.5” is not whole: thousandths are not divided further.');
  await expect(field).toHaveValue('12.5');
  expect((await onPage(page)).offsets[0]).toBe(0);
});

test('tracking is apart from the offsets, and built-in is one look away', async ({ page, open }) => {
  await open();
  await page.getByRole('textbox', { name: 'Tracking' }).fill('−15');
  await page.getByRole('textbox', { name: 'Tracking' }).press('Enter');
  expect(await onPage(page)).toMatchObject({ tracking: -15, offsets: new Array(8).fill(0) });
  const mine = await placeOfGap(page, 5);
  await page.getByRole('button', { name: 'Built-in', exact: true }).click();
  await expect.poll(async () => (await placeOfGap(page, 5)).x).toBeGreaterThan(mine.x);
  expect((await onPage(page)).tracking).toBe(-15);
  await page.getByRole('button', { name: 'Mine' }).click();
  await expect.poll(async () => (await placeOfGap(page, 5)).x).toBeCloseTo(mine.x, 0);
});

test('single keys look at the line, can be changed and can be switched off', async ({ page, open }) => {
  await open();
  await page.keyboard.press('Tab');
  const white = page.getByRole('button', { name: 'White between' });
  await page.keyboard.press('w');
  await expect(white).toHaveAttribute('aria-pressed', 'true');
  await page.getByRole('button', { name: 'Keys' }).click();
  await page.getByRole('textbox', { name: 'Key for: White between' }).fill('q');
  await page.getByRole('slider').first().focus();
  await page.keyboard.press('w');
  await expect(white).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('q');
  await expect(white).toHaveAttribute('aria-pressed', 'false');
  await page.getByRole('checkbox', { name: 'Use single keys' }).uncheck();
  await page.getByRole('slider').first().focus();
  await page.keyboard.press('q');
  await expect(white).toHaveAttribute('aria-pressed', 'false');
  await page.reload();
  await page.getByRole('button', { name: 'Keys' }).click();
  await expect(page.getByRole('textbox', { name: 'Key for: White between' })).toHaveValue('q');
});

test('one finger drags, two zoom', async ({ browser, open }) => {
  const context = await browser.newContext({ hasTouch: true, viewport: { width: 390, height: 800 } });
  const page = await context.newPage();
  await open(page);
  const cdp = await context.newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: [number, number][]) =>
    cdp.send('Input.dispatchTouchEvent', { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) });
  const { x, y } = await placeOfGap(page, 0);
  await touch('touchStart', [[x, y]]);
  await touch('touchMove', [[x - 10, y]]);
  await touch('touchMove', [[x - 20, y]]);
  await touch('touchEnd', []);
  const dragged = (await onPage(page)).offsets[0]!;
  expect(dragged).toBeLessThan(-50);
  await touch('touchStart', [
    [x, y],
    [x + 60, y],
  ]);
  await touch('touchMove', [
    [x - 30, y],
    [x + 90, y],
  ]);
  await touch('touchEnd', []);
  expect(await page.evaluate(() => window.benchSession.store.get().zoom)).toBeCloseTo(2, 1);
  expect((await onPage(page)).offsets[0]).toBe(dragged);
  await context.close();
});
