import { expect } from '@playwright/test';
import { axeOn } from '../axe';
import { onPage, placeOfGap, test } from './fixture';

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing, keys shown, ${colorScheme}`, async ({ browser, open }) => {
    const context = await browser.newContext({ colorScheme });
    const page = await context.newPage();
    await open(page);
    await page.getByRole('button', { name: 'Keys' }).click();
    const violations = await axeOn(page);
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`),
    ).toEqual([]);
    await context.close();
  });
}

test('the bench tells nothing where the exercise says so, unless gaps are spoken for this student', async ({
  page,
  server,
  open,
}) => {
  await open();
  await expect(page.locator('[data-part=gauges]')).toHaveCount(1);
  server.props = { tells: 'nothing' };
  await open();
  await expect(page.getByText(/rest of the line/)).toHaveCount(0);
  await expect(page.locator('[data-part=gauges]')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Show me why' })).toHaveCount(0);
  expect(await page.getByRole('slider').first().getAttribute('aria-valuetext')).toMatch(/^offset 0, total minus \d+$/);
  server.props = { tells: 'nothing', accommodations: { speakGaps: true, workingView: 1.5, singleKeysOff: true } };
  await page.reload();
  await expect(page.getByRole('slider').first()).toHaveAttribute('aria-valuetext', /line/);
  await page.getByRole('button', { name: 'Keys' }).click();
  await expect(page.getByRole('checkbox', { name: 'Use single keys' })).not.toBeChecked();
});

test('the line stands where the browser would set it', async ({ page, open }) => {
  await open();
  // A canvas that has just been given to the thread is empty until the thread has drawn on it.
  await page.locator('canvas[data-view=true][data-drawn=thread]').waitFor();
  const inkOfLine = () =>
    page.evaluate(() => {
      const canvas = document.querySelector<HTMLCanvasElement>('canvas[data-view=true]')!;
      // What another thread has painted can be looked at by laying it on a canvas of our own.
      const context = Object.assign(document.createElement('canvas'), {
        width: canvas.width,
        height: canvas.height,
      }).getContext('2d')!;
      context.drawImage(canvas, 0, 0);
      const row = context.getImageData(0, 0, canvas.width, canvas.height);
      let first = canvas.width;
      let last = 0;
      for (let i = 3; i < row.data.length; i += 4) {
        const x = ((i - 3) / 4) % canvas.width;
        // Thin ends of serifs fill their pixels in part.
        if (row.data[i]! > 24) {
          first = Math.min(first, x);
          last = Math.max(last, x);
        }
      }
      return { inked: last + 1 - first, dpr: devicePixelRatio };
    });
  // The page shows the picture some time after the thread says it is drawn: wait until the ink no longer changes.
  let widths = await inkOfLine();
  await expect
    .poll(async () => {
      const before = widths.inked;
      widths = await inkOfLine();
      return widths.inked > 0 && widths.inked === before;
    })
    .toBe(true);
  // The oracle is the browser's own text layout in the same face, ligatures off: the ink of the whole line is as wide.
  const { readFile } = await import('node:fs/promises');
  const font = (
    await readFile('node_modules/@fontsource/libre-baskerville/files/libre-baskerville-latin-400-normal.woff2')
  ).toString('base64');
  const expected = await page.evaluate(async (data) => {
    const face = new FontFace('Oracle', `url(data:font/woff2;base64,${data})`);
    document.fonts.add(await face.load());
    const context = document.createElement('canvas').getContext('2d')!;
    context.font = '1000px Oracle';
    // Text in a document is kerned across a word space; on a canvas it is not.
    const span = document.createElement('span');
    span.style.cssText = 'font: 1000px Oracle; white-space: pre; font-variant-ligatures: none; position: absolute';
    span.textContent = 'Volta Yawl';
    document.body.append(span);
    const advance = span.getBoundingClientRect().width;
    span.remove();
    const [first, last] = [context.measureText('V'), context.measureText('l')];
    return 0.072 * (advance + first.actualBoundingBoxLeft - (last.width - last.actualBoundingBoxRight));
  }, font);
  expect(Math.abs(widths.inked / widths.dpr - expected)).toBeLessThan(1);
});

test('three letters at a time move on with the gap', async ({ page, open }) => {
  await open();
  await page.keyboard.press('Tab');
  await page.keyboard.press('t');
  const inkedColumns = () =>
    page.evaluate(() => {
      const canvas = document.querySelector<HTMLCanvasElement>('canvas[data-view=working]')!;
      const context = Object.assign(document.createElement('canvas'), {
        width: canvas.width,
        height: canvas.height,
      }).getContext('2d')!;
      context.drawImage(canvas, 0, 0);
      const { data } = context.getImageData(0, canvas.height / 2, canvas.width, 1);
      let last = 0;
      for (let x = 0; x < canvas.width; x += 1) if (data[4 * x + 3]! > 128) last = x;
      return last;
    });
  const fourth = (await placeOfGap(page, 2)).x;
  // Three letters are drawn, and no fourth: what was drawn before goes when the page is given the new picture.
  const endsBefore = (x: number) => async () => ((column) => column > 0 && column < x)(await inkedColumns());
  await expect.poll(endsBefore(fourth)).toBe(true);
  const first = await inkedColumns();
  for (let press = 0; press < 3; press += 1) await page.keyboard.press('Enter');
  await expect.poll(inkedColumns).toBeGreaterThan(first);
});

test('the guided line goes from a gap to an even line, by keyboard', async ({ page, server }) => {
  server.props = { guided: true };
  await page.goto(server.address);
  const next = page.getByRole('button', { name: 'Next', exact: true });
  await page.getByRole('slider', { name: 'gap between o and l' }).focus();
  await expect(page.getByText('That is it.')).toBeVisible();
  await next.click();
  await page.getByRole('slider', { name: 'gap between o and l' }).focus();
  for (const _ of [1, 2, 3, 4]) await page.keyboard.press('ArrowRight');
  await expect(page.getByText(/Everything to the right moved along/)).toBeVisible();
  await next.click();
  // Walk through the gaps until the loose one is found.
  const found = page.getByText(/^Yes, /);
  await page.getByRole('slider', { name: 'gap between o and l' }).focus();
  for (let gap = 0; gap < 8 && !(await found.isVisible()); gap += 1) {
    await page.keyboard.press('Enter');
    await page.waitForTimeout(30);
  }
  await expect(found).toBeVisible();
  await next.click();
  await page.locator('[data-gap][tabindex="0"]').focus();
  const even = page.getByText(/Now it matches the others/);
  for (let press = 0; press < 10 && !(await even.isVisible()); press += 1) {
    await page.keyboard.press('PageDown');
    await page.waitForTimeout(30);
  }
  await expect(even).toBeVisible();
  await next.click();
  await page.getByRole('button', { name: 'Start with my own lines' }).click();
  expect(await page.evaluate(() => window.guideEnded)).toBe('done');
});

test('an instructor sets tolerance and reason, and both are saved with the spacing', async ({ page, server, open }) => {
  server.props = { mode: 'reference', tolerances: new Array(8).fill(null), reasons: new Array(8).fill('') };
  await open();
  await page.getByRole('textbox', { name: 'Tolerance ±' }).fill('8');
  await page.getByRole('textbox', { name: /Reason for/ }).fill('The V leans over the o.');
  await page.keyboard.press('Tab');
  await expect(page.getByText('All changes are saved.')).toBeVisible();
  await expect.poll(() => server.toy().kept().document.reasons?.[0]).toBe('The V leans over the o.');
  expect(server.toy().kept().document.tolerances?.[0]).toBe(8);
  expect((await onPage(page)).offsets).toEqual(new Array(8).fill(0));
});
