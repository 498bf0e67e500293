import { expect, test, type Page } from '@playwright/test';
import { axeOn } from './axe';
import { demo, signedIn } from './people';
import { addTwelveLines, notesIn, removeTwelveLines } from './twelve-lines';

/** A marker who uses the keyboard alone, in an exercise of twelve lines that five students have sent. */
let marker: Page;
let made: ReturnType<typeof addTwelveLines>;
let base: string;
let strokes = 0;

test.describe.configure({ mode: 'serial', timeout: 300_000 });

test.beforeAll(async ({ browser, baseURL }) => {
  base = baseURL!;
  made = addTwelveLines(base, 5);
  marker = (await signedIn(browser, demo.assistant)).page;
});
test.afterAll(() => removeTwelveLines(base, made.exerciseId));

const round = () => `/exercises/${made.exerciseId}/rounds/1`;
const across = (line: number) => `${round()}/specimens/${made.specimenIds[line]}`;
const listening = () => expect(marker.locator('body')).toHaveAttribute('data-keys', 'on');
const saved = () => marker.getByText(/^Note on .* saved\.$/);

async function press(...keys: string[]) {
  for (const key of keys) {
    await listening();
    await marker.keyboard.press(key);
    strokes += 1;
  }
}

/** Presses a key that leads elsewhere, and waits until the next page hears keys. */
async function goBy(key: string) {
  const from = marker.url();
  await press(key);
  await marker.waitForURL((url) => url.href !== from);
  await listening();
}

/** Takes the first proof of the queue by the button, as one begins. */
async function begin() {
  await marker.goto(`${round()}/critique`);
  await marker.getByRole('button', { name: 'Mark the next proof' }).press('Enter');
  await marker.waitForURL(/\/critique\/[A-Z0-9]{3}-[A-Z0-9]{3}\//);
  await listening();
}

/** Goes on to the first line on which the measure finds something. */
async function beginAtAFault() {
  const said = marker.locator('p[role=status]').first();
  await begin();
  for (let line = 0; line < 12; line += 1) {
    await press('i');
    await expect(said).not.toBeEmpty();
    if (!(await said.textContent())?.includes('no conspicuous pair')) return;
    await goBy('n');
  }
  throw new Error('The measure finds nothing on any of the twelve lines.');
}

test('goes through twelve lines of one student and leaves twelve notes, five keystrokes or fewer each', async () => {
  await begin();
  strokes = 0;
  for (let line = 1; line <= 12; line += 1) {
    await expect(marker.getByText(new RegExp(`^Line ${line} of 12`))).toBeVisible();
    // The measure’s worst fault, five closer, the stock note that is suggested there, on to the next line.
    await press('i', 'ArrowLeft', '1');
    await expect(saved()).toBeVisible();
    if (line < 12) await goBy('n');
  }
  const notes = notesIn(base, made.exerciseId);
  expect(notes).toHaveLength(12);
  expect(new Set(notes.map(({ line }) => line)).size).toBe(12);
  expect(notes.every(({ suggestion }) => suggestion !== null)).toBe(true);
  console.log(
    `Keyboard alone: ${strokes} keystrokes for twelve notes on twelve lines, ${(strokes / 12).toFixed(2)} a note, going on included.`,
  );
  expect(strokes / 12).toBeLessThanOrEqual(5);
});

test('a key pressed while the next line is on its way acts on neither', async () => {
  await begin();
  const before = notesIn(base, made.exerciseId).length;
  await marker.route(/\/critique\/.*_rsc=/, async (way) => {
    await new Promise((done) => setTimeout(done, 800));
    await way.continue();
  });
  const from = marker.url();
  await press('n');
  for (const key of ['1', 'ArrowLeft', '2']) await marker.keyboard.press(key);
  await marker.waitForURL((url) => url.href !== from);
  await listening();
  await marker.unrouteAll({ behavior: 'ignoreErrors' });
  await expect(marker.getByText('No suggestion. Tighten or open')).toBeVisible();
  expect(notesIn(base, made.exerciseId)).toHaveLength(before);
});

test('takes the next that waits, skips one, and gives one back', async () => {
  await begin();
  const first = marker.url();
  await goBy('k');
  expect(marker.url()).not.toBe(first);
  const second = marker.url();
  await goBy('q');
  expect([first, second]).not.toContain(marker.url());
  await press('G');
  await marker.waitForURL(/\/rounds\/1\/critique$/);
  await expect(marker.getByRole('row').last()).toContainText('Skipped by you');
  await marker.getByRole('button', { name: 'Resume' }).click();
  await expect(marker.getByText('Skipped by you')).toHaveCount(0);
});

test('a note on a run, on the line, its thread, its edits, settled or not', async () => {
  await begin();
  const notes = marker.getByRole('complementary', { name: 'Notes' });
  const before = await notes.getByRole('article').count();
  await press('j', 'J', 'J', 'r');
  await marker.keyboard.type('These three stand too far apart.');
  await marker.keyboard.press('Control+Enter');
  await expect(notes.getByRole('article')).toHaveCount(before + 1);
  await press('0', 'r');
  await marker.keyboard.type('The line as a whole is well seen.');
  await marker.keyboard.press('Control+Enter');
  const onLine = notes.getByRole('article', { name: /on the line$/ }).filter({ hasText: 'well seen' });
  await expect(onLine).toBeVisible();
  const onRun = notes.getByRole('article').filter({ hasText: 'These three' });
  await onRun.getByRole('button', { name: 'Edit' }).click();
  await onRun.getByLabel('The note, in other words').fill('These four stand too far apart.');
  await onRun.getByRole('button', { name: 'Save' }).click();
  const edited = notes.getByRole('article').filter({ hasText: 'These four' });
  await expect(edited).toContainText('(edited)');
  await edited.getByRole('button', { name: 'Answer' }).click();
  await edited.getByLabel(/^Answer/).fill('Look at it from afar.');
  await edited.getByRole('button', { name: 'Save' }).click();
  await expect(edited).toContainText('Look at it from afar.');
  await edited.getByRole('button', { name: 'Settle' }).click();
  await expect(edited).toContainText('settled');
  await marker.reload();
  await expect(edited).toContainText('settled');
  // A bracket on the drawing for the run; a note's first text is kept beside its present one.
  await expect(marker.locator('.line-drawing').last().locator('.tie')).not.toHaveCount(0);
  expect(notesIn(base, made.exerciseId).some(({ body }) => body === 'These three stand too far apart.')).toBe(true);
});

test('a stock note of one’s own comes first where the measure finds its fault, and can be dropped', async () => {
  await beginAtAFault();
  const stock = marker.getByRole('region', { name: 'Stock notes' });
  await expect(stock.getByRole('listitem').first()).toContainText('fits what was measured');
  await press('r');
  await marker.keyboard.type('My own words on {pair}.');
  await stock.getByRole('button', { name: 'Keep what is typed as a stock note' }).click();
  await expect(stock.getByRole('listitem').filter({ hasText: 'My own words on' })).toBeVisible();
  await stock.getByRole('button', { name: /^Drop the stock note “My own words/ }).click();
  await expect(stock.getByRole('listitem').filter({ hasText: 'My own words on' })).toHaveCount(0);
  await marker.getByLabel(/^Note on/).fill('');
});

test('all of the bench’s ways of looking are there, by the bench’s letters', async () => {
  await begin();
  const large = marker.locator('.line-drawing').last();
  await press('l');
  await expect(large.locator('.letters')).toHaveCount(0);
  await expect(large.locator('pattern')).not.toHaveCount(0);
  await press('l');
  await expect(large.locator('.letters')).toHaveCount(1);
  await press('s');
  await expect(large.locator('g:has(> g > .letters)')).toHaveAttribute('filter', /url/);
  await press('o');
  await expect(marker.locator('.sheet-dark')).toHaveCount(1);
  await press('h');
  await expect(large.locator(':scope > g').first()).toHaveAttribute('transform', /^matrix\(-1 0 0 -1 /);
  await press('m');
  await expect(large.locator(':scope > g').first()).toHaveAttribute('transform', /^matrix\(1 0 0 -1 /);
  // The edges are those of the chosen gap.
  await press('j', 'y');
  await expect(large.locator('.edge-seen')).toHaveCount(1);
  await expect(marker.getByRole('button', { name: 'Show the deviations' })).toBeVisible();
  await expect(
    marker.getByRole('group', { name: 'Ways of looking', includeHidden: true }).locator('[aria-pressed=true]'),
  ).toHaveCount(5);
});

test('one line across the class: those who share a fault get one remark, each after a look', async () => {
  await marker.goto(across(0));
  await expect(marker.locator('.line-drawing')).toHaveCount(5);
  for (const name of ['Calloway', 'Oosterveld', 'Tarr', 'Lindqvist'])
    expect(await marker.content()).not.toContain(name);
  const before = notesIn(base, made.exerciseId).length;
  await goBy('i');
  const share = await marker.locator('.line-drawing').count();
  expect(share).toBeGreaterThan(1);
  expect((await axeOn(marker)).map(({ id }) => id)).toEqual([]);
  await press('1', 'g');
  const look = marker.getByRole('region', { name: /set by/ });
  await expect(look).toBeVisible();
  expect(notesIn(base, made.exerciseId)).toHaveLength(before);
  expect((await axeOn(marker)).map(({ id }) => id)).toEqual([]);
  // The first is passed over; the rest get it, the last in words of its own and with a nudge.
  await press('n');
  for (let left = 0; left < share - 2; left += 1) await press('y');
  await press('t', 'e');
  await marker.getByLabel(/^The remark for .* alone$/).fill('In words for this one alone.');
  await marker.keyboard.press('Control+Enter');
  await expect(look).toHaveCount(0);
  await expect.poll(() => notesIn(base, made.exerciseId).length).toBe(before + share - 1);
  const last = notesIn(base, made.exerciseId).at(-1)!;
  expect(last.body).toBe('In words for this one alone.');
  expect(last.suggestion).not.toBeNull();
  await press('z');
  await expect.poll(() => notesIn(base, made.exerciseId).length).toBe(before + share - 2);
});

test('a remark left without a network is kept, goes out once when it is back, and is not asked for again after a reload', async () => {
  await marker.goto(across(2));
  await goBy('i');
  const before = notesIn(base, made.exerciseId).length;
  await press('1', 'g');
  await marker.context().setOffline(true);
  await press('y');
  await expect(marker.getByText('1 note not saved yet')).toBeVisible();
  await marker.context().setOffline(false);
  await expect.poll(() => notesIn(base, made.exerciseId).length).toBe(before + 1);
  await expect(marker.getByText('1 note not saved yet')).toHaveCount(0);
  await marker.reload();
  await listening();
  await expect(marker.getByText(/^1 left, 0 passed over/)).toBeVisible();
});
