import { expect, test, type Page } from '@playwright/test';
import { instructor } from '../../prisma/seed/people';
import { axeOn } from './axe';
import { ines, signIn } from './demo-people';
import { ownExercise } from './own-exercise';

/** What the screens promise: one press from signing in, one screen to work on, type first. */
const small = { width: 1280, height: 720 };

const scrolls = (page: Page) => page.evaluate(() => document.documentElement.scrollHeight > innerHeight);

test('from signing in it is one press to the bench and one to the notes that are out', async ({ page }) => {
  await page.setViewportSize(small);
  await signIn(page, ines);
  await expect(page.getByText('Your notes are out.')).toBeVisible();
  expect(await axeOn(page)).toEqual([]);
  await page.getByRole('link', { name: 'Read your notes' }).click();
  await expect(page).toHaveURL(/\/proofs\//);
  await page.goto('/courses');
  await page.getByRole('link', { name: /^(Space this line|Start with the first line)$/ }).click();
  await expect(page).toHaveURL(/\/bench\//);
  const leave = page.getByRole('button', { name: /leave the guide/i });
  await expect(leave.or(page.locator('canvas[data-view=working][data-drawn]')).first()).toBeVisible();
  if (await leave.isVisible()) await leave.click();
  await expect(page.locator('canvas[data-view=working][data-drawn]')).toBeVisible();
  expect(await scrolls(page)).toBe(false);
  await expect(page.getByText(/^due/)).toBeInViewport();
  await expect(page.getByRole('link', { name: 'Next line' })).toBeInViewport();
});

test('notes that are out are told of whichever exercise they are, also beside work that is due earlier', async ({
  page,
  baseURL,
}) => {
  const other = ownExercise(baseURL!, 'A sign for a slipway', []);
  try {
    await page.setViewportSize(small);
    await signIn(page, ines);
    const now = page.getByRole('region', { name: 'To do now' });
    await expect(now.getByRole('link', { name: 'A sign for a slipway' })).toBeVisible();
    await expect(now.getByText('Your notes are out.')).toBeVisible();
    await expect(now.getByText(/^Signs for a harbour, round \d/)).toBeVisible();
    expect(await axeOn(page)).toEqual([]);
  } finally {
    other.putAway();
  }
});

test('from signing in it is one press to the desk, which is one screen', async ({ page }) => {
  await page.setViewportSize(small);
  await signIn(page, instructor);
  // Other rounds may wait, too: of exercises that other tests have made in this course.
  const round = page.getByRole('region', { name: /^Signs for a harbour, round/ }).first();
  await expect(round.getByText(/^\d+ of \d+ students$/)).toBeVisible();
  expect(await axeOn(page)).toEqual([]);
  await round.getByRole('button', { name: 'Mark the next proof' }).click();
  await expect(page).toHaveURL(/\/critique\//);
  await expect(page.locator('body')).toHaveAttribute('data-keys', 'on');
  expect(await scrolls(page)).toBe(false);
  const parts = [
    page.getByRole('group', { name: 'The line at its true size' }),
    page.locator('.line-drawing').last(),
    page.getByRole('group', { name: 'Ways of looking' }),
    page.getByRole('group', { name: 'Suggested spacing' }),
    page.getByRole('complementary', { name: 'Notes' }),
    page.getByRole('heading', { name: 'Marks of the whole proof' }),
  ];
  for (const part of parts) await expect(part).toBeInViewport({ ratio: 0.95 });
  // Gaps are stepped and looks switched by the keys of the bench.
  await page.keyboard.press('j');
  await expect(page.getByRole('button', { name: /^pair 1,/ })).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('w');
  await expect(page.getByRole('button', { name: 'White between' })).toHaveAttribute('aria-pressed', 'true');
  expect(await axeOn(page)).toEqual([]);
});

test('the lines of an exercise are there before the words about it, as large beside one another as they will be', async ({
  page,
}) => {
  await page.setViewportSize(small);
  await signIn(page, ines);
  await page.getByRole('link', { name: 'Signs for a harbour' }).first().click();
  const lines = page.locator('.work-line svg');
  await expect(lines.first()).toBeInViewport();
  // One scale for all: CSS px of screen for each px of type.
  const scales = await page.locator('.work-line').evaluateAll((items) =>
    items.map((item) => {
      const svg = item.querySelector('svg')!;
      return svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
    }),
  );
  const sizes = (await page.locator('.work-line-words').allTextContents()).map((words) => {
    const [, value, unit] = words.match(/(\d+)\s*(px|pt)/)!;
    return Number(value) * (unit === 'pt' ? 96 / 72 : 1);
  });
  expect(sizes.length).toBeGreaterThan(3);
  const perPixel = scales.map((scale, index) => scale / sizes[index]!);
  // Faces have 1000, 1024 or 2048 units an em, which the frames are in.
  for (const one of perPixel) {
    const ratio = one / perPixel[0]!;
    const nearest = [1, 1000 / 2048, 2048 / 1000, 1000 / 1024, 1024 / 1000, 2, 0.5].some(
      (units) => Math.abs(ratio / units - 1) < 0.01,
    );
    expect(nearest, `${ratio}`).toBe(true);
  }
  await expect(page.getByRole('link', { name: 'Send a proof…' })).toBeInViewport();
  expect(await axeOn(page)).toEqual([]);
});

test('the line of the first page is spaced at once, by keys and by drag, and nothing is stored', async ({ page }) => {
  await page.goto('/');
  await expect(page.locator('.first-line[data-ready]')).toBeVisible();
  const value = page.getByRole('slider');
  const before = Number(await value.inputValue());
  await page.keyboard.press('ArrowLeft');
  await expect(value).toHaveValue(String(before - 5));
  await page.keyboard.press('j');
  await expect(value).toHaveAccessibleName('gap between capital A and capital T');
  const sheet = page.locator('.first-line-sheet svg');
  const box = (await sheet.boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 30, box.y + box.height / 2, { steps: 4 });
  await page.mouse.up();
  await expect(value).not.toHaveAccessibleName('gap between capital A and capital T');
  expect(Number(await value.inputValue())).toBeGreaterThan(0);
  await page.keyboard.press('w');
  await expect(sheet.locator('pattern').first()).toBeAttached();
  await page.getByRole('button', { name: 'Compare with the line set by eye' }).click();
  await expect(page.getByRole('img', { name: 'WATERLAND, set by eye' }).first()).toBeVisible();
  expect(await page.evaluate(() => localStorage.length)).toBe(0);
  expect(await axeOn(page)).toEqual([]);
});
