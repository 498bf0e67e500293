import type { Pack } from '@/shared/schemas/pack';
import { changeOf, type Order, type OrderChange } from './order';
import { paintOrder } from './paint-order';
import type { FromWorker, ToWorker } from './painter.worker';
import { drawSoon } from '@/app/_line/brush';

/**
 * What paints the canvases. `data-drawn` on a canvas says that it has been painted, and by which: `page` or `thread`.
 */
export type Painter = {
  /** Takes control of a canvas that has no context yet. */
  take(canvas: HTMLCanvasElement): number;
  packNumber(pack: Pack): number;
  paint(order: Order): void;
  forget(canvas: number): void;
};

let painter: Painter | null = null;
const changed = new Set<() => void>();

/**
 * The painter of this page: a thread of its own, so that input never waits for painting. The page paints by itself
 * until the thread has loaded, in a browser that can't transfer a canvas, and when the thread fails.
 */
export function currentPainter(): Painter {
  if (painter) return painter;
  painter = inPage();
  if ('transferControlToOffscreen' in HTMLCanvasElement.prototype) startThread();
  return painter;
}

function startThread(): void {
  const worker = new Worker(new URL('./painter.worker.ts', import.meta.url), { type: 'module' });
  const takeOver = (next: Painter) => {
    painter = next;
    for (const tell of changed) tell();
  };
  // Its first message says that it is running.
  worker.addEventListener('message', () => takeOver(inThread(worker)), { once: true });
  worker.addEventListener('error', () => {
    worker.terminate();
    takeOver(inPage());
  });
}

/** Notifies when another painter has taken over: transferred canvases have to be made again. */
export function onPainterChange(listener: () => void): () => void {
  changed.add(listener);
  return () => void changed.delete(listener);
}

/** Keeps a canvas in place over its replacement until the replacement has been painted. */
export function keepUntilPainted(canvas: HTMLCanvasElement): void {
  if (!canvas.hasAttribute('data-drawn')) return canvas.remove();
  canvas.removeAttribute('data-drawn');
  canvas.removeAttribute('data-view');
  canvas.dataset.left = '';
}

function isDrawn(canvas: HTMLCanvasElement | undefined, by: 'page' | 'thread'): void {
  if (!canvas) return;
  canvas.dataset.drawn = by;
  for (const left of canvas.parentElement?.querySelectorAll('canvas[data-left]') ?? []) left.remove();
}

function inThread(worker: Worker): Painter {
  const post = (message: ToWorker, transfer: Transferable[] = []) => worker.postMessage(message, transfer);
  const canvases = new Map<number, HTMLCanvasElement>();
  const numbers = numbering();
  const given = new Map<number, Order>();
  // All drawings of one change are sent together.
  let orders: OrderChange[] = [];
  const send = () => {
    post({ kind: 'paint', orders });
    orders = [];
  };
  worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
    if ('drawn' in data) isDrawn(canvases.get(data.drawn), 'thread');
  });
  return {
    take(canvas) {
      const id = numbers.next();
      canvases.set(id, canvas);
      const surface = canvas.transferControlToOffscreen();
      post({ kind: 'canvas', id, surface }, [surface]);
      return id;
    },
    packNumber: (pack) => numbers.of(pack, (id) => post({ kind: 'pack', id, pack })),
    paint(order) {
      const change = changeOf(order, given.get(order.canvas));
      if (!change) return;
      given.set(order.canvas, order);
      if (orders.push(change) === 1) queueMicrotask(send);
    },
    forget(id) {
      canvases.delete(id);
      given.delete(id);
      post({ kind: 'forget', id });
    },
  };
}

function inPage(): Painter {
  const canvases = new Map<number, HTMLCanvasElement>();
  const packs = new Map<number, Pack>();
  const orders = new Map<number, Order>();
  const numbers = numbering();
  const paintAll = () => {
    for (const [id, order] of orders) {
      const [canvas, pack] = [canvases.get(id), packs.get(order.pack)];
      if (!canvas || !pack) continue;
      paintOrder(canvas, pack, order);
      isDrawn(canvas, 'page');
    }
    orders.clear();
  };
  return {
    take(canvas) {
      const id = numbers.next();
      canvases.set(id, canvas);
      return id;
    },
    packNumber: (pack) => numbers.of(pack, (id) => packs.set(id, pack)),
    paint(order) {
      orders.set(order.canvas, order);
      drawSoon(paintAll);
    },
    forget(id) {
      canvases.delete(id);
      orders.delete(id);
    },
  };
}

/** Numbers for canvases and for packs, given at first use. */
function numbering() {
  let last = 0;
  const known = new WeakMap<Pack, number>();
  const next = () => (last += 1);
  return {
    next,
    of(pack: Pack, isNew: (id: number) => void): number {
      const id = known.get(pack) ?? next();
      if (!known.has(pack)) {
        known.set(pack, id);
        isNew(id);
      }
      return id;
    },
  };
}
