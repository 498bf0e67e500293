import { expect, test, type Page } from '@playwright/test';
import { students } from '@/prisma/seed/people';
import { randomFrom } from '../fixtures/random';
import { signedIn } from './people';
import { startBeside } from './server-beside';

/**
 * A rough sitting at the application itself: random edits while the network is cut, windows are closed without notice,
 * and the server is killed and started again. Run it longer, or again, with ROUGH_EDITS and ROUGH_SEED.
 */
const edits = Number(process.env.ROUGH_EDITS ?? 24);
const seed = Number(process.env.ROUGH_SEED ?? 20261128);
/**
 * How often each of the troubles occurs, one in so many edits; a server takes longer to return than a window or a
 * network.
 */
const oneIn = { cut: 6, close: 7, kill: 8 + Math.floor(edits / 40) };

test(`a rough sitting of ${edits} edits with a server that is killed loses nothing (seed ${seed})`, async ({
  browser,
  baseURL,
}) => {
  test.setTimeout(180_000 + edits * 3_000);
  const server = await startBeside(Number(new URL(baseURL!).port) + 1);
  try {
    const next = randomFrom(seed);
    const { context, page: first } = await signedIn(browser, students[0]!, { baseURL: server.origin });
    const bench = await findBench(first);
    let page = first;
    let [cut, killed] = [false, false];
    const troubles = { cuts: 0, closed: 0, kills: 0 };
    const expected = await offsets(page);

    const mend = async () => {
      if (cut) await context.setOffline(false);
      if (killed) await server.startAgain();
      [cut, killed] = [false, false];
    };
    const close = async () => {
      await page.close();
      await mend();
      page = await context.newPage();
      await open(page, bench);
      expect(await offsets(page)).toEqual(expected);
    };
    for (let edit = 0; edit < edits; edit += 1) {
      if (next(oneIn.cut) === 0) {
        cut = !cut;
        if (cut) troubles.cuts += 1;
        await context.setOffline(cut);
      }
      if (next(oneIn.kill) === 0) {
        if (killed) await server.startAgain();
        else await server.kill();
        killed = !killed;
        if (killed) troubles.kills += 1;
      }
      const gap = next(expected.length);
      const wider = next(2) === 0;
      await page.locator(`[data-gap="${gap}"]`).focus();
      await page.keyboard.press(wider ? 'ArrowRight' : 'PageDown');
      expected[gap]! += wider ? 5 : -20;
      if (next(3) === 0) await page.waitForTimeout(next(600));
      if (next(oneIn.close) === 0) {
        troubles.closed += 1;
        await close();
      }
    }
    await close();
    await page.evaluate(() => window.dispatchEvent(new Event('online')));
    await expect(page.getByText('All changes are saved.')).toBeVisible({ timeout: 60_000 });
    console.log(`${edits} edits, seed ${seed}: ${JSON.stringify(troubles)}`);

    // A browser that has no journal shows what the server has.
    const { page: elsewhere } = await signedIn(browser, students[0]!, { baseURL: server.origin });
    await open(elsewhere, bench);
    expect(await offsets(elsewhere)).toEqual(expected);
  } finally {
    await server.stop();
  }
});

/** From the course to the bench of its first line, past the guided line that precedes the first one. */
async function findBench(page: Page): Promise<string> {
  await page.goto('/courses');
  await page.getByRole('link', { name: 'Lettering for display' }).click();
  await page.getByRole('link', { name: 'Signs for a harbour' }).first().click();
  await page.locator('a[href*="/bench/"]').first().click();
  const drawn = page.locator('canvas[data-view=working][data-drawn]');
  await drawn.waitFor();
  const leave = page.getByRole('button', { name: 'Leave the guide' });
  if (await leave.isVisible()) await leave.click();
  await drawn.waitFor();
  return page.url();
}

async function open(page: Page, bench: string): Promise<void> {
  await page.goto(bench);
  await page.locator('canvas[data-view=working][data-drawn]').waitFor();
}

/** The sliders' values once input has paused. */
async function offsets(page: Page): Promise<number[]> {
  await page.waitForTimeout(200);
  return page
    .locator('[data-gap]')
    .evaluateAll((inputs) => inputs.map((input) => Number((input as HTMLInputElement).value)));
}
