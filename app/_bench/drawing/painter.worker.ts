import type { Pack } from '@/shared/schemas/pack';
import { changed, type Order, type OrderChange } from './order';
import { paintOrder } from './paint-order';

export type ToWorker =
  | { readonly kind: 'pack'; readonly id: number; readonly pack: Pack }
  | { readonly kind: 'canvas'; readonly id: number; readonly surface: OffscreenCanvas }
  | { readonly kind: 'paint'; readonly orders: readonly OrderChange[] }
  | { readonly kind: 'forget'; readonly id: number };

/** Messages to the page: the thread is running; a canvas has been painted for the first time. */
export type FromWorker = { readonly ready: true } | { readonly drawn: number };

const packs = new Map<number, Pack>();
const surfaces = new Map<number, OffscreenCanvas>();
const drawn = new Set<number>();
/**
 * The newest order of each canvas, and the canvases not painted yet: when changes arrive faster than they can be
 * painted, the ones in between are skipped.
 */
const newest = new Map<number, Order>();
const waiting = new Set<number>();
let asked = false;

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === 'pack') packs.set(data.id, data.pack);
  else if (data.kind === 'canvas') surfaces.set(data.id, data.surface);
  else if (data.kind === 'forget') {
    surfaces.delete(data.id);
    newest.delete(data.id);
    waiting.delete(data.id);
  } else {
    for (const change of data.orders) {
      newest.set(change.canvas, changed(newest.get(change.canvas), change));
      waiting.add(change.canvas);
    }
    if (!asked) setTimeout(paintAll, 0);
    asked = true;
  }
});

self.postMessage({ ready: true } satisfies FromWorker);

function paintAll(): void {
  asked = false;
  for (const id of waiting) {
    const [surface, order] = [surfaces.get(id), newest.get(id)];
    const pack = order && packs.get(order.pack);
    if (!surface || !order || !pack) continue;
    paintOrder(surface, pack, order);
    if (drawn.has(id)) continue;
    drawn.add(id);
    self.postMessage({ drawn: id } satisfies FromWorker);
  }
  waiting.clear();
}
