import type { Pack } from '@/shared/schemas/pack';
import { changeOf, type Order, type OrderChange } from './order';
import { paintOrder } from './paint-order';
import type { FromWorker, ToWorker } from './painter.worker';
import { drawSoon } from '@/app/_line/brush';

/** Who paints. `data-drawn` on a canvas says that something is on it, and who painted it: `page` or `thread`. */
export type Painter = {
  /** Takes over a canvas that has no context yet. */
  take(canvas: HTMLCanvasElement): number;
  packNumber(pack: Pack): number;
  paint(order: Order): void;
  forget(canvas: number): void;
};

let painter: Painter | null = null;
const changed = new Set<() => void>();

/**
 * The painter of this page: a thread of its own, so that input never waits for painting; the page itself until the
 * thread's code has come, in a browser that cannot give a canvas away, and when the thread fails.
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
  // Its first word is that it is there.
  worker.addEventListener('message', () => takeOver(inThread(worker)), { once: true });
  worker.addEventListener('error', () => {
    worker.terminate();
    takeOver(inPage());
  });
}

/** Tells when another painter has taken over: canvases that were given away have to be made again. */
export function onPainterChange(listener: () => void): () => void {
  changed.add(listener);
  return () => void changed.delete(listener);
}

/** Has a canvas stay where it is, over the one that is made in its place, until that one is drawn. */
export function leaveStanding(canvas: HTMLCanvasElement): void {
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
  // All drawings of one change go over together.
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

/** Numbers for canvases, and for packs the first time one is met. */
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
