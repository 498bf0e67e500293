import { expect, test, type Page } from '@playwright/test';
import { assistant, instructor, students } from '@/prisma/seed/people';
import { axeOn } from './axe';
import { htmlFaults } from './html';
import { signInAs, walk } from './walk';

/*
 * Walks every page that a person can reach by links, once per kind of page, and holds each against axe, against the
 * HTML standard, against the width of a phone, and against the browser's own complaints (a refused style or script, a broken address).
 */
const phone = { width: 390, height: 844 };
const desk = { width: 1280, height: 900 };

const visitors = [
  { who: 'a visitor', person: null },
  { who: 'a student', person: students[0]! },
  { who: 'an assistant', person: assistant },
  { who: 'an instructor', person: instructor },
];

// Each is long, and none changes anything: the workers share them.
test.describe.configure({ mode: 'parallel' });

for (const { who, person } of visitors) {
  test(`every page of ${who} is sound, narrow and wide`, async ({ page }) => {
    test.setTimeout(600_000);
    if (person) await signInAs(page, person);
    const { seen, faults } = await walk(page, ['/', person ? '/courses' : '/sign-in'], async (path, html) => {
      const found = (await htmlFaults(html)).map((fault) => `${path}: ${fault}`);
      for (const size of [desk, phone])
        found.push(...(await faultsAt(page, size)).map((fault) => `${path} at ${size.width}: ${fault}`));
      await page.setViewportSize(desk);
      return found;
    });
    expect(seen.size).toBeGreaterThan(person ? 8 : 6);
    expect(faults).toEqual([]);
  });
}

async function faultsAt(page: Page, size: { width: number; height: number }): Promise<string[]> {
  await page.setViewportSize(size);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  const violations = await axeOn(page);
  return [
    ...(wide > size.width ? [`scrolls sideways, ${wide} px wide`] : []),
    ...violations.map(
      ({ id, nodes }) =>
        `axe ${id}: ${nodes
          .map((node) => node.target.join(' '))
          .slice(0, 3)
          .join(', ')}`,
    ),
  ];
}

test('axe is asked in earnest: a picture without words is found', async ({ page }) => {
  await page.setContent('<main><h1>Signs</h1><img src="data:,"></main>');
  expect((await axeOn(page, 'main')).map(({ id }) => id)).toContain('image-alt');
});

test('the HTML standard is asked in earnest: two things of one id are found', async () => {
  const html =
    '<!doctype html><html lang="en"><head><title>Signs</title></head><body><p id="a"></p><p id="a"></p></body></html>';
  expect((await htmlFaults(html)).join()).toContain('html no-dup-id');
});
