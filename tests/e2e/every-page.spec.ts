import { expect, test, type Page } from '@playwright/test';
import { assistant, instructor, students } from '@/prisma/seed/people';
import { axeOn } from './axe';

/*
 * Walks every page that a person can reach by links, once per kind of page, and holds each against axe, against the width
 * of a phone, and against the browser's own complaints (a refused style or script, a broken address).
 */
const phone = { width: 390, height: 844 };
const desk = { width: 1280, height: 900 };

const visitors = [
  { who: 'a visitor', person: null },
  { who: 'a student', person: students[0]! },
  { who: 'an assistant', person: assistant },
  { who: 'an instructor', person: instructor },
];

for (const { who, person } of visitors) {
  test(`every page of ${who} is sound, narrow and wide`, async ({ page }) => {
    test.setTimeout(600_000);
    const faults: string[] = [];
    let here = '/';
    page.on('console', (message) => {
      if (message.type() === 'error') faults.push(`${here}: ${message.text()}`);
    });
    page.on('pageerror', (error) => faults.push(`${here}: ${error.message}`));
    if (person) await signIn(page, person);

    const seen = new Set<string>();
    const queue = ['/', person ? '/courses' : '/sign-in'];
    for (const path of queue) {
      const kind = kindOf(path);
      if (seen.has(kind)) continue;
      seen.add(kind);
      here = path;
      await page.setViewportSize(desk);
      const answer = await page.goto(path);
      if (answer?.status() !== 200) {
        faults.push(`${path}: ${answer?.status()}`);
        continue;
      }
      await expect(page.locator('main')).toHaveCount(1);
      if ((await page.locator('h1').count()) !== 1) faults.push(`${path}: ${await page.locator('h1').count()} h1`);
      queue.push(...(await linksOf(page)));
      for (const size of [desk, phone])
        faults.push(...(await faultsAt(page, size)).map((fault) => `${path} at ${size.width}: ${fault}`));
    }
    expect(seen.size).toBeGreaterThan(person ? 8 : 6);
    expect(faults).toEqual([]);
  });
}

/** Pages that differ only in an id or a face are one kind. */
const kindOf = (path: string) =>
  path
    .replace(/[?#].*/, '')
    .replace(/[0-9a-f]{8}-[0-9a-f-]{27}|[\w-]{20,}/g, '…')
    .replace(/(faces|rounds)\/[^/]+/, '$1/…');

async function linksOf(page: Page): Promise<string[]> {
  const found = await page
    .locator('a[href]')
    .evaluateAll((links) =>
      links.filter((link) => !link.hasAttribute('download')).map((link) => link.getAttribute('href') ?? ''),
    );
  // Files and exports are no pages.
  return found.filter(
    (href) => href.startsWith('/') && !href.startsWith('/api/') && !/\.(csv|svg|json|css|png)$|\/export/.test(href),
  );
}

async function faultsAt(page: Page, size: { width: number; height: number }): Promise<string[]> {
  await page.setViewportSize(size);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  const { violations } = await axeOn(page).analyze();
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

async function signIn(page: Page, person: { email: string; password: string }): Promise<void> {
  await page.goto('/sign-in');
  await page.locator('input[name=email]').fill(person.email);
  await page.locator('input[type=password]').fill(person.password);
  await page.locator('main form button[type=submit]').first().click();
  await page.waitForURL(/\/courses/);
}
