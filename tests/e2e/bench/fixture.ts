import { readFile } from 'node:fs/promises';
import { test as base, type Page } from '@playwright/test';
import type { BenchProps } from '@/app/_bench/props';
import type { BenchSession } from '@/app/_bench/session/session';
import type { SpacingDocument } from '@/shared/editing/document';
import { type Pack, packSchema } from '@/shared/schemas/pack';
import { bundleBench, type Bundle } from './bundle';
import { serveBench, type BenchServer } from './serve';

declare global {
  interface Window {
    benchSession: BenchSession;
    guideEnded?: string;
  }
}

export async function packOf(name: 'volta-yawl' | 'market-avenue'): Promise<Pack> {
  return packSchema.parse(JSON.parse(await readFile(`tests/fixtures/packs/${name}.json`, 'utf8')));
}

export function propsOf(pack: Pack, more: Partial<BenchProps> = {}): BenchProps {
  return {
    mode: 'work',
    pack,
    size: { value: 72, unit: 'px' },
    ground: 'light',
    spacing: { tracking: 0, offsets: pack.builtIn.map(() => 0) },
    version: 0,
    draftId: 'draft-1',
    personKey: 'person-1',
    tells: 'everything',
    save: '/save',
    ...more,
  };
}

export const test = base.extend<{ server: BenchServer; open: (page?: Page) => Promise<void> }, { bundle: Bundle }>({
  bundle: [async ({}, give) => give(await bundleBench('tests/e2e/bench/entry.tsx')), { scope: 'worker' }],
  server: async ({ bundle }, give) => {
    const server = await serveBench(bundle, propsOf(await packOf('volta-yawl')));
    await give(server);
    await server.close();
  },
  open: async ({ page, server }, give) => {
    await give(async (on = page) => {
      await on.goto(server.address);
      await on.locator('canvas[data-view=working][data-drawn]').waitFor();
      await on.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
    });
  },
});

/** The document being worked on, as the page holds it. */
export function onPage(page: Page): Promise<SpacingDocument> {
  return page.evaluate(() => {
    const { history } = window.benchSession.store.get();
    return (history.gesture ? history.gesture.value : history.steps[history.cursor])!;
  });
}

/** Middle of a gap's slider on the screen, on top of the gap itself. */
export async function placeOfGap(page: Page, gap: number): Promise<{ x: number; y: number }> {
  const box = await page.locator(`[data-gap="${gap}"]`).boundingBox();
  if (!box) throw new Error(`Gap ${gap} is not on the screen.`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}
