import { chromium as browserType } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { packSchema } from '@/shared/schemas/pack';
import { chromium } from '../../../lib/bin/test/programs.mjs';
import { bundleBench } from '../../e2e/bench/bundle';
import { serveBench } from '../../e2e/bench/serve';

/**
 * What the page's heap holds before and after dragging for some minutes, both after the garbage was collected:
 *   npx tsx tests/bench/instrument/heap.ts [minutes, 10] [minutes of warming up, 5]
 * The warm-up comes first, so that what is made once is there before. Machine code that the engine makes of what runs
 * often is told apart: it grows for many minutes, ever more slowly.
 */
const [minutes, warmUp] = [Number(process.argv[2] ?? 10), Number(process.argv[3] ?? 5)];
const pack = packSchema.parse(JSON.parse(await readFile('tests/fixtures/packs/market-avenue.json', 'utf8')));
const server = await serveBench(await bundleBench('tests/e2e/bench/entry.tsx'), {
  mode: 'work',
  pack,
  size: { value: 64, unit: 'px' },
  ground: 'light',
  spacing: { tracking: 0, offsets: pack.builtIn.map(() => 0) },
  version: 0,
  draftId: 'd',
  personKey: 'p',
  tells: 'everything',
  save: '/save',
});
const browser = await browserType.launch({
  executablePath: chromium() ?? undefined,
  args: ['--no-sandbox', '--disable-gpu'],
});
const page = await browser.newPage({ viewport: { width: 1280, height: 1000 } });
const cdp = await page.context().newCDPSession(page);
await page.goto(server.address);
await page.locator('canvas[data-view=working][data-drawn=thread]').waitFor();
await page.evaluate(() => {
  for (const look of ['white', 'counters', 'guides', 'why'] as const) window.benchSession.toggleLook(look);
});

await dragFor(warmUp);
const before = await heap();
const drags = await dragFor(minutes);
const after = await heap();
const grown = (part: keyof Heap) => ({
  'kB before': Math.round(before[part] / 1000),
  'kB after': Math.round(after[part] / 1000),
  'change %': Math.round(1000 * (after[part] / before[part] - 1)) / 10,
});
console.log(
  JSON.stringify(
    {
      minutes,
      'minutes of warming up': warmUp,
      drags,
      heap: grown('all'),
      'without machine code': grown('withoutCode'),
    },
    null,
    2,
  ),
);
await browser.close();
await server.close();

/** One drag after another over the whole line and back, each undone, since undo steps are kept on purpose. */
async function dragFor(length: number): Promise<number> {
  const end = Date.now() + length * 60_000;
  let count = 0;
  for (; Date.now() < end; count += 1) {
    const box = (await page.locator(`[data-gap="${count % 8}"]`).boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let step = 1; step <= 40; step += 1) await page.mouse.move(x + (step % 20), y);
    await page.mouse.up();
    await page.keyboard.press('Control+z');
  }
  return count;
}

type Heap = { all: number; withoutCode: number };

async function heap(): Promise<Heap> {
  await page.waitForTimeout(2_000);
  await cdp.send('HeapProfiler.collectGarbage');
  await cdp.send('HeapProfiler.collectGarbage');
  const all = (await cdp.send('Runtime.getHeapUsage')).usedSize;
  return { all, withoutCode: all - (await codeBytes()) };
}

type Snapshot = {
  snapshot: { meta: { node_fields: string[]; node_types: [string[], ...unknown[]] } };
  nodes: number[];
};

/** What the engine's own code takes of the heap, by a snapshot of it. */
async function codeBytes(): Promise<number> {
  const chunks: string[] = [];
  const collect = ({ chunk }: { chunk: string }) => void chunks.push(chunk);
  cdp.on('HeapProfiler.addHeapSnapshotChunk', collect);
  await cdp.send('HeapProfiler.takeHeapSnapshot');
  cdp.off('HeapProfiler.addHeapSnapshotChunk', collect);
  const {
    snapshot: { meta },
    nodes,
  } = JSON.parse(chunks.join('')) as Snapshot;
  const [width, type, size, code] = [
    meta.node_fields.length,
    meta.node_fields.indexOf('type'),
    meta.node_fields.indexOf('self_size'),
    meta.node_types[0].indexOf('code'),
  ];
  let bytes = 0;
  for (let node = 0; node < nodes.length; node += width) if (nodes[node + type] === code) bytes += nodes[node + size]!;
  return bytes;
}
