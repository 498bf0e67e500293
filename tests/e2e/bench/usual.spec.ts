import { expect } from '@playwright/test';
import { onPage, test } from './fixture';

const scale = 'svg[aria-label^="Offset"]';

test('what is usual is shown once a gap was tried, as a bracket with words for screen readers', async ({
  page,
  open,
}) => {
  await open();
  await page.locator('[data-gap="2"]').focus();
  await expect(page.getByText('Try this gap, and what is usual is shown.')).toBeVisible();
  await expect(page.locator(scale)).toHaveCount(0);
  await page.keyboard.press('PageDown');
  await expect(page.locator(scale)).toBeVisible();
  const label = await page.locator(scale).getAttribute('aria-label');
  expect(label).toMatch(
    /^Offset −20\. Usual for half of designers [+−]?\d+ to [+−]?\d+, for nine tenths [+−]?\d+ to [+−]?\d+\.$/,
  );
  // Each end of the nine tenths is at least as far out as that of the half.
  const [, halfLow, halfHigh, low, high] = [...label!.matchAll(/[+−]?\d+/g)].map(([text]) =>
    Number(text.replace('−', '-').replace('+', '')),
  );
  expect(low).toBeLessThanOrEqual(halfLow!);
  expect(high).toBeGreaterThanOrEqual(halfHigh!);
  await page.getByText('What is usual here?').click();
  await expect(page.getByText(/^Estimated .+, at reading sizes; yours .+\./)).toBeVisible();
});

test('the bracket stays where it is on the offset’s scale while the offset moves', async ({ page, open }) => {
  await open();
  await page.locator('[data-gap="2"]').focus();
  await page.keyboard.press('PageDown');
  const half = page.locator(`${scale} rect`);
  const before = { x: await half.getAttribute('x'), label: await page.locator(scale).getAttribute('aria-label') };
  await page.keyboard.press('ArrowDown');
  await expect(page.locator(scale)).toHaveAttribute('aria-label', /^Offset −21\./);
  expect((await onPage(page)).offsets[2]).toBe(-21);
  const after = (await page.locator(scale).getAttribute('aria-label'))!;
  const middle = (label: string) => [...label.matchAll(/[+−]?\d+/g)].map(([text]) => Number(text.replace('−', '-')));
  // The line's own tightness may move with one pair, by far less than the pair itself.
  for (const at of [1, 2, 3, 4])
    expect(Math.abs(middle(after)[at]! - middle(before.label!)[at]!)).toBeLessThanOrEqual(1);
});

for (const tells of ['nothing', 'contact'] as const)
  test(`nothing is said of it where the bench tells ${tells}`, async ({ page, open, server }) => {
    server.props = { tells };
    await open();
    await page.locator('[data-gap="2"]').focus();
    await page.keyboard.press('PageDown');
    await page.waitForTimeout(400);
    await expect(page.locator(scale)).toHaveCount(0);
    await expect(page.getByText('what is usual is shown')).toHaveCount(0);
  });

test('where a reference may be seen its tolerance decides, and only whoever sets one is told what is usual', async ({
  page,
  open,
  server,
}) => {
  const said = page.getByText(/than designers usually set it/);
  const widen = async () => {
    await open();
    await page.locator('[data-gap="2"]').focus();
    for (let press = 0; press < 6; press += 1) await page.keyboard.press('PageUp');
  };
  await widen();
  await expect(said).toBeVisible();
  const offsets = [...(await onPage(page)).offsets];
  const reference = { id: 'reference-1', label: 'Reference by A. Tuzla', spacing: { tracking: 0, offsets } };
  server.props = { overlays: [{ ...reference, tolerances: offsets.map(() => 10) }] };
  await widen();
  await expect(page.locator(scale)).toBeVisible();
  await expect(said).toHaveCount(0);
});
