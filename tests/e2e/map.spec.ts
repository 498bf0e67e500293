import Papa from 'papaparse';
import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { axeOn } from './axe';
import { bram, ines } from './demo-people';
import { demo, signedIn } from './people';

/** The class as a map, its charts and the term of one student, on the demo’s rounds; nothing is changed here. */
let instructorPage: Page;
let exercise: string;

test.describe.configure({ mode: 'serial' });

test.beforeAll(async ({ browser }) => {
  instructorPage = (await signedIn(browser, demo.instructor)).page;
  await instructorPage.goto('/courses');
  await instructorPage.getByRole('link', { name: 'Lettering for display' }).click();
  await instructorPage.getByRole('link', { name: 'Signs for a harbour' }).first().click();
  await instructorPage.waitForURL(/\/exercises\//);
  exercise = new URL(instructorPage.url()).pathname;
});

const cell = () => instructorPage.getByRole('gridcell');
const openMap = async (query: string) => {
  await instructorPage.goto(`${exercise}/map?${query}`);
  await instructorPage.waitForFunction(() => performance.getEntriesByName('map-drawn').length > 0);
};
const faults = async (page: Page) =>
  (await axeOn(page)).map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`);

test('the map is one stop of the Tab key, walked by arrows, and says each cell', async () => {
  await openMap('round=1');
  await cell().focus();
  await expect(cell()).toHaveText(
    /^.+, HA: \d+ (tighter|wider) than the reference, (within|outside) the tolerance of \d+$/,
  );
  await instructorPage.keyboard.press('ArrowRight');
  await expect(cell()).toBeFocused();
  await expect(cell()).toHaveText(/, AV: /);
  await expect(cell()).toHaveAttribute('aria-colindex', '3');
  const first = await instructorPage.getByRole('rowheader').textContent();
  await instructorPage.keyboard.press('ArrowDown');
  await expect(instructorPage.getByRole('rowheader')).not.toHaveText(first!);
  await instructorPage.keyboard.press('Control+End');
  await expect(cell()).toHaveText(/, VE: /);
  await expect(
    instructorPage
      .getByRole('region', { name: 'The line under the cell' })
      .getByRole('img', { name: /^HAVEN TO WAVE as set by / }),
  ).toBeVisible();
  // One stop: from the cell, Tab leads on to the line below.
  await instructorPage.keyboard.press('Tab');
  await expect(instructorPage.getByRole('link', { name: 'Open at the desk' })).toBeFocused();
});

test('rows are put in order, by name and by a pair', async () => {
  // Names are shown where everything that was sent is released.
  const hidden = exercise;
  await expect(instructorPage.getByLabel('Order of the rows').getByRole('option', { name: 'By name' })).toHaveCount(0);
  await instructorPage.goto('/courses');
  await instructorPage.getByRole('link', { name: 'Lettering for display, first term', exact: true }).click();
  await instructorPage.getByRole('link', { name: 'Plates for a toll house' }).first().click();
  await instructorPage.waitForURL(/\/exercises\//);
  exercise = new URL(instructorPage.url()).pathname;
  await openMap('round=1');
  exercise = hidden;
  await instructorPage.getByLabel('Order of the rows').selectOption('By name');
  await cell().focus();
  await instructorPage.keyboard.press('Control+Home');
  await expect(instructorPage.getByRole('rowheader')).toHaveText('Bram Oosterveld');
  await instructorPage.keyboard.press('ArrowRight');
  await instructorPage.getByRole('button', { name: /^Sort the rows by / }).click();
  await expect(instructorPage.getByLabel('Order of the rows')).toHaveValue('pair 1');
  await expect(cell()).toHaveText(/ (wider|tighter) than /);
});

test('a cell that is pointed at shows its line, and a tap keeps it', async () => {
  await openMap('round=1');
  const grid = instructorPage.getByRole('grid');
  await grid.hover({ position: { x: 250, y: 130 } });
  const under = instructorPage.getByRole('region', { name: 'The line under the cell' });
  const words = await under.getByRole('paragraph').first().textContent();
  await grid.click({ position: { x: 250, y: 130 } });
  await expect(cell()).toBeFocused();
  await expect(under.getByRole('paragraph').first()).toHaveText(words!);
  await under.getByRole('link', { name: 'Open at the desk' }).click();
  await instructorPage.waitForURL(/\/critique\//);
});

test('all lines side by side; the same numbers as a table and as CSV', async () => {
  await openMap('round=1&line=all');
  await expect(instructorPage.getByText(/^14 students × 84 pairs/)).toBeVisible();
  await openMap('round=1');
  await instructorPage.getByRole('link', { name: 'As a table' }).click();
  const rows = instructorPage.getByRole('table', { name: /Deviations/ }).getByRole('row');
  await expect(rows).toHaveCount(15);
  const [download] = await Promise.all([
    instructorPage.waitForEvent('download'),
    instructorPage.getByRole('link', { name: 'CSV', exact: true }).click(),
  ]);
  const records = Papa.parse<Record<string, string>>(readFileSync(await download.path(), 'utf8').slice(1), {
    delimiter: ',',
    header: true,
    skipEmptyLines: true,
  }).data;
  expect(records).toHaveLength(14 * 10);
});

test('where names are hidden the map has none, in the page, the numbers and the file', async () => {
  const names = ['Calloway', 'Oosterveld', 'Tarr', 'Lindqvist', 'Wexcombe', 'Adeyo'];
  for (const address of [
    `${exercise}/map?round=2`,
    `${exercise}/map?round=2&as=table`,
    `${exercise.replace('/exercises/', '/api/class/map/')}?round=2`,
    `${exercise.replace('/exercises/', '/api/exports/map/')}?round=2`,
  ]) {
    const text = await (await instructorPage.request.get(address)).text();
    for (const name of names) expect(text.includes(name), `${name} in ${address}`).toBe(false);
  }
});

test('charts have their numbers and a file of their own, by the strict policy of the pages', async () => {
  const complaints: string[] = [];
  instructorPage.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await instructorPage.goto(`${exercise}/progress`);
  const chart = instructorPage
    .getByRole('figure')
    .filter({ has: instructorPage.getByRole('img', { name: 'Distance from the nearest reference' }) });
  await chart.getByText('The numbers').click();
  await expect(chart.getByRole('table').getByRole('row')).toHaveCount(3);
  const [download] = await Promise.all([
    instructorPage.waitForEvent('download'),
    chart.getByRole('link', { name: /^CSV/ }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('progress-deviation.csv');
  expect(readFileSync(await download.path(), 'utf8').split('\r\n')[0]).toContain('HAVEN TO WAVE');
  expect(complaints).toEqual([]);
});

test('a line of the class page opens to its totals, pair by pair', async () => {
  await instructorPage.goto(`${exercise}/class?round=1`);
  await instructorPage.getByRole('link', { name: 'HAVEN TO WAVE' }).click();
  await expect(instructorPage.getByRole('img', { name: 'Totals of “HAVEN TO WAVE”, pair by pair' })).toBeVisible();
});

test('the class page says which kinds of side are missed most, and draws them all when asked', async () => {
  await instructorPage.goto(`${exercise}/class?round=1`);
  await expect(instructorPage.getByText(/Most often at \S beside \S.*: .* of \d+ gaps/)).toBeVisible();
  await instructorPage.getByRole('link', { name: 'All kinds as a chart' }).click();
  await expect(
    instructorPage.getByRole('img', {
      name: 'How often the class is outside, by the two sides that face each other',
    }),
  ).toBeVisible();
  expect(await faults(instructorPage)).toEqual([]);
});

test('a term is looked at from the people page, and by its student without what is not released', async ({
  browser,
}) => {
  await instructorPage.goto(exercise);
  await instructorPage.getByRole('link', { name: 'Lettering for display' }).first().click();
  await instructorPage.getByRole('link', { name: 'People' }).click();
  await instructorPage.getByRole('link', { name: `Term of ${bram.name}` }).click();
  await expect(instructorPage.getByRole('heading', { name: `${bram.name}: the term` })).toBeVisible();
  await expect(instructorPage.getByRole('row', { name: /^Signs for a harbour Round 2/ })).toContainText(
    'names are hidden until it is released',
  );
  expect(await faults(instructorPage)).toEqual([]);

  const { page } = await signedIn(browser, ines);
  await page.goto('/courses');
  await page.getByRole('link', { name: 'Lettering for display' }).click();
  await page.getByRole('link', { name: 'My term' }).click();
  await expect(page.getByRole('row', { name: /^Signs for a harbour Round 1/ })).toContainText('%');
  await expect(page.getByRole('row', { name: /^Signs for a harbour Round 2/ })).toContainText('not released yet');
  expect(await faults(page)).toEqual([]);
});

test('nothing for axe to find, light and dark, and no sideways scrolling on a phone', async ({ browser }) => {
  for (const colorScheme of ['light', 'dark'] as const) {
    const { page, context } = await signedIn(browser, demo.instructor, {
      colorScheme,
      viewport: { width: 390, height: 844 },
    });
    for (const address of [`${exercise}/map?round=1`, `${exercise}/map?round=1&as=table`, `${exercise}/progress`]) {
      await page.goto(address);
      if (!address.includes('table') && address.includes('map'))
        await page.waitForFunction(() => performance.getEntriesByName('map-drawn').length > 0);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), address).toBeLessThanOrEqual(390);
      expect(await faults(page), address).toEqual([]);
    }
    await context.close();
  }
});
