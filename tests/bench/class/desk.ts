import { randomUUID } from 'node:crypto';
import { chromium as findChromium } from '@/lib/bin/test/programs.mjs';
import { chromium, type Page } from '@playwright/test';
import type { Filled } from './fill';
import { ask, percentile } from './load';

export type Waits = { p50: number; p95: number; most: number; times: number };

const line = ({ proofIds, specimenIds }: Filled, proof: number, specimen = 0) =>
  `/critique/${proofIds[proof % proofIds.length]}/${specimenIds[specimen]}`;

/** The server's part: the page of one proof after another, whole, one at a time. */
export async function nextProofOnServer(origin: string, filled: Filled, times: number): Promise<Waits> {
  const waits: number[] = [];
  for (let turn = 0; turn < times + 5; turn += 1) {
    const begun = performance.now();
    await ask(origin, undefined, { path: line(filled, turn * 7), cookie: filled.instructorCookie });
    if (turn >= 5) waits.push(performance.now() - begun);
  }
  return waitsOf(waits);
}

/** A note as the desk sends it, from sent to answered, one at a time. */
export async function noteOnServer(origin: string, filled: Filled, times: number): Promise<Waits> {
  const waits: number[] = [];
  for (let turn = 0; turn < times + 5; turn += 1) {
    const body = {
      proofId: filled.proofIds[turn % filled.proofIds.length],
      specimenVersionId: filled.versionIds[turn % filled.versionIds.length],
      requestKey: randomUUID(),
      fromPair: 1,
      toPair: 1,
      body: 'A little closer.',
      suggestion: [-10],
    };
    const begun = performance.now();
    await ask(origin, undefined, {
      path: '/api/critique/notes',
      method: 'POST',
      cookie: filled.instructorCookie,
      body,
    });
    if (turn >= 5) waits.push(performance.now() - begun);
  }
  return waitsOf(waits);
}

/** The same two as a marker meets them in a browser: from the key to what they may work with next. */
export async function deskInBrowser(
  origin: string,
  filled: Filled,
  times: number,
): Promise<{ next: Waits; note: Waits }> {
  const browser = await chromium.launch({
    executablePath: findChromium() ?? undefined,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
  try {
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
    const [name, value] = filled.instructorCookie.split('=') as [string, string];
    await context.addCookies([{ name, value, url: origin }]);
    // tsx marks functions with a helper that a page does not have.
    await context.addInitScript('globalThis.__name = (named) => named');
    const page = await context.newPage();
    await page.goto(`${origin}/exercises/${filled.exerciseId}/rounds/3/critique`);
    await page.locator('th a[href^="/critique/"]').first().click();
    await page.waitForURL(/\/critique\//);
    await listening(page);
    const next: number[] = [];
    const note: number[] = [];
    for (let turn = 0; turn < times; turn += 1) {
      const waited = await nextInBrowser(page);
      const kept = await noteInBrowser(page);
      if (turn >= 3) next.push(waited);
      if (turn >= 3) note.push(kept);
    }
    return { next: waitsOf(next), note: waitsOf(note) };
  } finally {
    await browser.close();
  }
}

/** Where the page keeps what it is timing. */
type Waiting = { waited?: Promise<number> };

const listening = (page: Page) => page.waitForFunction(() => document.body.dataset.keys === 'on');

/**
 * From the press of the key, as the page hears it, to the frame in which the next proof's line is drawn and hears keys
 * again.
 */
async function nextInBrowser(page: Page): Promise<number> {
  await listening(page);
  // Armed before the key goes out: the two do not travel the same way.
  await page.evaluate(() => {
    (globalThis as Waiting).waited = new Promise<number>((resolve) => {
      const place = () =>
        /Proof (\d+) of/.exec(document.querySelector('nav[aria-label="On to"]')?.textContent ?? '')?.[1];
      const before = { place: place(), title: document.querySelector('h1')?.textContent };
      let pressed = 0;
      document.addEventListener(
        'keydown',
        () => {
          pressed = performance.now();
          look();
        },
        { once: true, capture: true },
      );
      const look = () => {
        const there =
          place() !== before.place &&
          document.querySelector('h1')?.textContent !== before.title &&
          document.body.dataset.keys === 'on' &&
          document.querySelector('main svg, main canvas') !== null;
        // A task of its own after the frame: what was found in it has been painted.
        requestAnimationFrame(there ? () => setTimeout(() => resolve(performance.now() - pressed)) : look);
      };
    });
  });
  await page.keyboard.press('s');
  return page.evaluate(() => (globalThis as Waiting).waited!);
}

/** From Ctrl and Enter, as the page hears them, to the words that say the note is saved. */
async function noteInBrowser(page: Page): Promise<number> {
  await page.keyboard.press('w');
  await page.keyboard.type('Closer.');
  await page.evaluate(() => {
    (globalThis as Waiting).waited = new Promise<number>((resolve) => {
      const status = document.querySelector('aside [role=status]')!;
      let pressed = 0;
      document.addEventListener(
        'keydown',
        (event) => {
          if (event.key === 'Enter') pressed = performance.now();
        },
        { capture: true },
      );
      const look = new MutationObserver(() => {
        if (!/saved\.$/.test(status.textContent ?? '') || pressed === 0) return;
        look.disconnect();
        requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - pressed)));
      });
      look.observe(status, { childList: true, characterData: true, subtree: true });
    });
  });
  await page.keyboard.press('Control+Enter');
  return page.evaluate(() => (globalThis as Waiting).waited!);
}

function waitsOf(waits: readonly number[]): Waits {
  const sorted = waits.toSorted((one, other) => one - other);
  return {
    p50: percentile(sorted, 0.5),
    p95: percentile(sorted, 0.95),
    most: sorted.at(-1) ?? Number.NaN,
    times: sorted.length,
  };
}
