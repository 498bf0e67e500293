import { expect, test, type Locator, type Page } from '@playwright/test';
import { instructor } from '../../prisma/seed/people';
import { axeOn } from './axe';
import { idsOf } from './demo-ids';
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
  const scales = await shownPerPixel(page.locator('.work-line'));
  expect(scales.length).toBeGreaterThan(3);
  holdOneScale(scales);
  await expect(page.getByRole('link', { name: 'Send a proof…' })).toBeInViewport();
  expect(await axeOn(page)).toEqual([]);
});

test('released lines are at one scale with their notes in the margin, those without a note in a row', async ({
  page,
}) => {
  await page.setViewportSize(small);
  await signIn(page, ines);
  await openReleased(page);
  await expect(page).toHaveTitle(/^.+: round \d, proof \d/);
  const noted = page.getByRole('region', { name: 'Notes, line by line' }).getByRole('article');
  const first = noted.first();
  await expect(first.locator('svg').first()).toBeInViewport();
  // Beside the line, not under it, and told apart by the number at the end of its hairline.
  const [sheet, note] = [first.locator('.sheet').first(), first.getByRole('region', { name: /^Note 1 / })];
  const [at, beside] = [(await sheet.boundingBox())!, (await note.boundingBox())!];
  expect(beside.x).toBeGreaterThanOrEqual(at.x + at.width);
  expect(beside.y).toBeLessThan(at.y + at.height);
  await expect(first.locator('.tie-sign').first()).toHaveText('1');
  holdOneScale(await shownPerPixel(noted));
  // The others say at what share of their true size they are, and are at it.
  const row = page.getByRole('region', { name: 'Lines without a note' });
  const share = Number((await row.getByText(/true size/).textContent())!.match(/(\d+)\s?%/)?.[1] ?? 100) / 100;
  for (const scale of await shownPerPixel(row.getByRole('article'))) holdOneOf(scale / share, ems, 'share');
  await expect(page.getByText('The spacing of a line as a file')).toHaveCount(1);
  expect(await axeOn(page)).toEqual([]);
  await page.setViewportSize({ width: 390, height: 844 });
  const [narrow, under] = [(await sheet.boundingBox())!, (await note.boundingBox())!];
  expect(under.y).toBeGreaterThanOrEqual(narrow.y + narrow.height);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  holdOneScale(await shownPerPixel(noted));
});

/** For each line, CSS px of screen that a unit of its face has for each px of the size that is said under it. */
const shownPerPixel = (lines: Locator): Promise<number[]> =>
  lines.evaluateAll((items) =>
    items.map((item) => {
      const svg = item.querySelector('svg')!;
      const said = item.querySelector('.work-line-words')!.textContent!.match(/([\d.]+)\s*(px|pt)/)!;
      const type = Number(said[1]) * (said[2] === 'pt' ? 96 / 72 : 1);
      return svg.getBoundingClientRect().width / svg.viewBox.baseVal.width / type;
    }),
  );

/** What one unit of the faces in the demo is of an em. */
const ems = [1 / 1000, 1 / 1024, 1 / 2000, 1 / 2048];

/** Holds that lines are as large beside one another as in use: what differs is only the unit of their faces. */
function holdOneScale(scales: readonly number[]): void {
  const ratios = ems.flatMap((one) => ems.map((other) => one / other));
  for (const scale of scales) holdOneOf(scale / scales[0]!, ratios, 'ratio');
}

function holdOneOf(value: number, allowed: readonly number[], name: string): void {
  expect(
    allowed.some((one) => Math.abs(value / one - 1) < 0.01),
    `${name} ${value}`,
  ).toBe(true);
}

/** Opens the student's proof of this exercise whose notes are out: its address may be announced no longer. */
async function openReleased(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Signs for a harbour' }).first().click();
  const proofs = page.locator('a[href^="/proofs/"]');
  await expect(proofs.first()).toBeVisible();
  for (const address of await proofs.evaluateAll((links) => links.map((link) => link.getAttribute('href')!))) {
    await page.goto(address);
    if ((await page.getByRole('region', { name: 'Notes, line by line' }).count()) > 0) return;
  }
  throw new Error('no proof of this student is released');
}

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

test('the title of a page names the thing it shows', async ({ page, baseURL }) => {
  const { courseId, exerciseId, memberId, specimenId, roundId, criterionId } = idsOf(baseURL!, ines.email);
  await signIn(page, instructor);
  await page.goto(`/exercises/${exerciseId}`);
  const exercise = (await page.getByRole('heading', { level: 1 }).textContent())!;
  const titles: [string, RegExp][] = [
    [`/courses/${courseId}/people/${memberId}`, new RegExp(`^${ines.name} · .+ · Kerncrit$`)],
    [`/courses/${courseId}/people`, /^People · .+ · Kerncrit$/],
    [`/exercises/${exerciseId}`, new RegExp(`^${exercise} · Kerncrit$`)],
    [`/exercises/${exerciseId}/class`, new RegExp(`^Class · ${exercise} · Kerncrit$`)],
    [`/exercises/${exerciseId}/plan`, new RegExp(`^Plan · ${exercise} · Kerncrit$`)],
    [`/exercises/${exerciseId}/plan/rounds/${roundId}`, new RegExp(`^Round \\d · ${exercise} · Kerncrit$`)],
    [`/exercises/${exerciseId}/plan/criteria/${criterionId}`, new RegExp(`^(?!Criterion).+ · ${exercise} · Kerncrit$`)],
    [`/exercises/${exerciseId}/plan/specimens/${specimenId}`, new RegExp(`^“.+”, .+ ground · ${exercise} · Kerncrit$`)],
  ];
  for (const [address, title] of titles) {
    await page.goto(address);
    await expect(page, address).toHaveTitle(title);
  }
});

test('the class page draws what the class misses, keeps its tabs, and has the exports in one menu', async ({
  page,
}) => {
  await page.setViewportSize(small);
  await signIn(page, instructor);
  await page.goto('/courses');
  await page.getByRole('link', { name: 'Signs for a harbour' }).first().click();
  await page.getByRole('link', { name: 'Class', exact: true }).click();
  await page.getByRole('link', { name: /^Round 1/ }).click();
  await expect(page.getByRole('link', { name: 'Class', exact: true })).toHaveAttribute('aria-current', 'page');
  const missed = page.getByRole('region', { name: 'What the class misses' });
  await expect(missed.locator('svg').first()).toBeInViewport();
  await expect(missed.getByText(/^\S beside \S/).first()).toBeInViewport();
  // Every line that was sent is drawn, and says what it is.
  const lines = page.getByRole('region', { name: 'Line by line' }).locator('.class-lines > li');
  expect(await lines.count()).toBeGreaterThan(3);
  for (const line of await lines.all()) {
    await expect(line.locator('svg')).toHaveCount(1);
    await expect(line.locator('.work-line-words')).toContainText(/\d\s(px|pt), (light|dark) ground/);
  }
  // People come after the lines.
  const [drawn, people] = [await lines.first().boundingBox(), await page.getByRole('table').last().boundingBox()];
  expect(drawn!.y).toBeLessThan(people!.y);
  await page.getByText('Export', { exact: true }).click();
  await expect(page.getByRole('link', { name: 'Pairs as CSV' })).toBeVisible();
  expect(await axeOn(page)).toEqual([]);
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
});
