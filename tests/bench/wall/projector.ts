import type { Browser } from '@playwright/test';

/** A projector of 1920 × 1080 that reports when a line was painted anew. Resolves when all lines are shown. */
export async function openProjector(browser: Browser, origin: string, where: string, cookie: string, lines: number) {
  const context = await browser.newContext({ viewport: { width: 1920, height: 1080 } });
  const [name, value] = [cookie.slice(0, cookie.indexOf('=')), cookie.slice(cookie.indexOf('=') + 1)];
  await context.addCookies([{ name, value, url: origin }]);
  const page = await context.newPage();
  let tell: (at: number) => void = () => {};
  await page.exposeFunction('paintedAt', (at: number) => tell(at));
  await page.goto(origin + where);
  await page.waitForFunction((count) => document.querySelectorAll('canvas[data-drawn]').length === count, lines);
  await page.getByText('Live', { exact: true }).waitFor();
  await page.evaluate(() => {
    // `data-drawn` is set when the canvas was drawn on; what was drawn in a frame is on the screen when the next one
    // begins.
    const watch = new MutationObserver(() =>
      requestAnimationFrame(() => {
        void (globalThis as unknown as { paintedAt: (at: number) => void }).paintedAt(
          performance.timeOrigin + performance.now(),
        );
      }),
    );
    watch.observe(document.body, { subtree: true, attributes: true, attributeFilter: ['data-drawn'] });
  });
  return {
    nextPainted: () =>
      new Promise<number>((done) => {
        tell = done;
      }),
  };
}
