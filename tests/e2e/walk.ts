import { expect, type Page } from '@playwright/test';

/**
 * Goes from page to page by the links in them, to the first of each kind, and looks at each.
 * @param look gives back what is wrong with the page that is open and with its HTML as the server sent it
 * @returns what kinds of page there were, and what was wrong: an answer other than 200, a complaint of the browser, a
 *   missing or second `main` or `h1`, and what `look` found
 */
export async function walk(
  page: Page,
  starts: readonly string[],
  look: (path: string, html: string) => Promise<string[]>,
) {
  const faults: string[] = [];
  let here = '/';
  page.on('console', (message) => {
    // That a proof is on another marker's desk already is an answer, which the page gives in words.
    if (/409/.test(message.text()) && message.location().url.endsWith('/api/critique/claims')) return;
    if (message.type() === 'error') faults.push(`${here}: ${message.text()}`);
  });
  page.on('pageerror', (error) => faults.push(`${here}: ${error.message}`));
  const seen = new Set<string>();
  const queue = [...starts];
  for (const path of queue) {
    const kind = kindOf(path);
    if (seen.has(kind)) continue;
    seen.add(kind);
    here = path;
    const answer = await page.goto(path);
    if (answer?.status() !== 200) {
      faults.push(`${path}: ${answer?.status()}`);
      continue;
    }
    await expect(page.locator('main')).toHaveCount(1);
    // A page comes in parts: what stands in for one is there until the part itself is.
    await expect(page.locator('h1'))
      .toHaveCount(1, { timeout: 5_000 })
      .catch(() => undefined);
    if ((await page.locator('h1').count()) !== 1) faults.push(`${path}: ${await page.locator('h1').count()} h1`);
    queue.push(...(await linksOf(page)));
    faults.push(...(await look(path, await answer.text())));
  }
  return { seen, faults };
}

/** Pages that differ only in an id or a face are one kind. */
const kindOf = (path: string) =>
  path
    .replace(/[?#].*/, '')
    .replace(/[0-9a-f]{8}-[0-9a-f-]{27}|[\w-]{20,}/g, '…')
    .replace(/(faces|rounds|critique)\/[^/]+/, '$1/…');

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

export async function signInAs(page: Page, person: { email: string; password: string }, origin = ''): Promise<void> {
  await page.goto(`${origin}/sign-in`);
  await page.locator('input[name=email]').fill(person.email);
  await page.locator('input[type=password]').fill(person.password);
  await page.locator('main form button[type=submit]').first().click();
  await page.waitForURL(/\/courses/);
}
