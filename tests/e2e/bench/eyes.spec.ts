import { expect } from '@playwright/test';
import { onPage, placeOfGap, test } from './fixture';

test('one letter moves between its neighbours and the rest of the line stays', async ({ page, open }) => {
  await open();
  const before = await placeOfGap(page, 4);
  await page.getByRole('button', { name: '5 right' }).click();
  await page.getByRole('button', { name: '5 right' }).click();
  expect((await onPage(page)).offsets).toEqual([10, -10, 0, 0, 0, 0, 0, 0]);
  await expect.poll(async () => (await placeOfGap(page, 4)).x).toBeCloseTo(before.x, 0);
});

test('a sitting can be watched again without changing anything', async ({ page, open }) => {
  await open();
  for (const gap of [1, 4]) {
    await page.locator(`[data-gap="${gap}"]`).focus();
    await page.keyboard.press('PageUp');
  }
  const made = await onPage(page);
  await page.getByRole('button', { name: 'Watch it again' }).click();
  await expect(page.getByText('step 0 of 2')).toBeVisible();
  await expect(page.locator('[aria-live=polite]').filter({ hasText: '20 wider' })).toBeVisible();
  await expect(page.getByText('step 2 of 2')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Watch it again' })).toBeVisible();
  expect(await onPage(page)).toEqual(made);
});

test('where less motion is asked for, a sitting is gone through by hand', async ({ page, open }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await open();
  for (const gap of [1, 4]) {
    await page.locator(`[data-gap="${gap}"]`).focus();
    await page.keyboard.press('PageUp');
  }
  await page.keyboard.press('a');
  await expect(page.getByText('step 0 of 2')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Play' })).toHaveCount(0);
  await page.getByRole('button', { name: 'Step forward' }).click();
  await expect(page.getByText('step 1 of 2')).toBeVisible();
  await page.getByRole('button', { name: 'Back to mine' }).click();
  await expect(page.getByText('step 1 of 2')).toHaveCount(0);
});

test('points are true once a card was held to the screen, and after a reload', async ({ page, server, open }) => {
  server.props = { size: { value: 72, unit: 'pt' } };
  await open();
  const inkHeight = () =>
    page.evaluate(() => {
      const canvas = document.querySelector<HTMLCanvasElement>('canvas[data-view=true]')!;
      return canvas.clientHeight;
    });
  const nominal = await inkHeight();
  await page.getByRole('button', { name: 'True size on screen' }).click();
  const slider = page.getByRole('slider', { name: 'Width of the frame' });
  // A screen with 5 px a millimetre: 72 pt are one inch are 25.4 mm are 127 px, against 96 px where nothing was
  // measured.
  await slider.fill('5');
  await expect(slider).toHaveAttribute('aria-valuetext', '428 pixels');
  await page.getByRole('button', { name: 'The frame fits the card' }).click();
  await expect.poll(inkHeight).toBeGreaterThan(1.25 * nominal);
  await expect.poll(inkHeight).toBeLessThan(1.36 * nominal);
  await page.reload();
  await expect.poll(inkHeight).toBeGreaterThan(1.25 * nominal);
});

test('on paper there is only the line, as outlines at its true size', async ({ page, open }) => {
  await open();
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  const drawing = page.locator('svg.line-true');
  await expect(drawing).toBeVisible();
  await expect(page.locator('canvas[data-view=working]')).toBeHidden();
  await expect(page.getByRole('button', { name: 'White between' })).toBeHidden();
  // 72 px for one em of 1000 units: the drawing is as many px high as its frame has units, times 0.072.
  const [units, height] = await drawing.evaluate((svg: SVGSVGElement) => [
    svg.viewBox.baseVal.height,
    svg.getBoundingClientRect().height,
  ]);
  expect(height! / units!).toBeCloseTo(0.072, 3);
});

test('another setting is laid under, beside and in turn, and nothing of it is saved', async ({
  page,
  server,
  open,
}) => {
  server.props = {
    overlays: [{ id: 'last', label: 'Last proof', spacing: { tracking: -20, offsets: new Array(8).fill(-10) } }],
  };
  await open();
  await page.getByLabel('Compare with').selectOption('Last proof');
  // Measured before: two lines one below the other are smaller.
  const mine = await placeOfGap(page, 6);
  await page.getByRole('combobox', { name: 'How', exact: true }).selectOption('beside it');
  await expect(page.locator('canvas[data-view=beside]')).toBeVisible();
  await page.getByRole('combobox', { name: 'How', exact: true }).selectOption('in slow turns');
  await expect.poll(async () => (await placeOfGap(page, 6)).x).toBeLessThan(mine.x - 10);
  await expect.poll(async () => (await placeOfGap(page, 6)).x).toBeCloseTo(mine.x, 0);
  expect(server.requests).toBe(0);
});

test('on a blurred line the marks of the chosen gap stay sharp, and go with the blur', async ({ page, open }) => {
  await open();
  const blurs = () =>
    page
      .locator('canvas[data-view=working]')
      .evaluate((line) => [...line.parentElement!.querySelectorAll('canvas')].map((canvas) => canvas.style.filter));
  await page.getByRole('button', { name: 'Blurred' }).click();
  await expect.poll(blurs).toEqual([expect.stringMatching(/^blur\(/), '']);
  // Under the sharp marks the blurred line has none: at its upper edge nothing is painted.
  const paintedRows = () =>
    page.locator('canvas[data-view=working]').evaluate((line) =>
      [...line.parentElement!.querySelectorAll('canvas')].map((canvas) => {
        const context = Object.assign(document.createElement('canvas'), {
          width: canvas.width,
          height: canvas.height,
        }).getContext('2d')!;
        context.drawImage(canvas, 0, 0);
        return context.getImageData(0, 0, canvas.width, 3).data.some((value) => value > 0);
      }),
    );
  await expect.poll(paintedRows).toEqual([false, true]);
  await page.getByRole('button', { name: 'Blurred' }).click();
  await expect.poll(blurs).toEqual(['']);
});
