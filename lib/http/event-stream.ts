import { AppError } from '@/lib/access/errors';
import { logError } from '@/lib/log';

type Source = {
  /** Calls `hear` when something may have changed; returns what ends it. */
  listen: (hear: () => void) => () => void;
  /** The whole present state as one line of JSON; null when it is over. */
  read: () => Promise<string | null>;
  signal: AbortSignal;
};

/** Rarer than this nothing is sent, so that a proxy or a phone does not take the line for dead. */
const beatEvery = 15_000;
/** Changes in quick succession are sent together. */
const minimumPause = 120;
/** Streams of one process; beyond it a page asks every few seconds instead. */
const most = 2_000;
let open = 0;

/**
 * Server-sent events (WHATWG HTML, 9.2) that always carry the whole present state, so that a page which was cut off has
 * missed nothing and Last-Event-ID has nothing to say. One message at a time waits for a slow reader; what changes
 * meanwhile goes into the next. `over` is sent at the end, after which a page asks no more.
 */
export function eventStream({ listen, read, signal }: Source): Response {
  if (open >= most)
    throw new AppError(
      'UNAVAILABLE',
      'Too many pages are following at this moment. This one asks every few seconds instead.',
      { retryAfterSeconds: 30 },
    );
  open += 1;
  let changed = true;
  let wake = () => {};
  let last: string | null = null;
  let sentAt = 0;
  let over = false;
  const hear = () => {
    changed = true;
    wake();
  };
  const stopListening = listen(hear);
  const end = () => {
    if (over) return;
    over = true;
    open -= 1;
    stopListening();
    wake();
  };
  signal.addEventListener('abort', end);

  const body = new ReadableStream<Uint8Array>({
    async pull(controller) {
      try {
        const message = await next();
        if (message !== null) controller.enqueue(encoder.encode(message));
        if (over) controller.close();
      } catch (error) {
        // The page connects again by itself.
        if (!over) logError(error);
        end();
        controller.error(error);
      }
    },
    cancel: end,
  });

  /** Waits for the next message; null when the reader has left. */
  async function next(): Promise<string | null> {
    for (;;) {
      const isBeat = !(await somethingHeard());
      if (over) return null;
      const wait = sentAt + minimumPause - Date.now();
      if (!isBeat && wait > 0)
        await new Promise((done) => {
          setTimeout(done, wait);
        });
      changed = false;
      const state = await read();
      if (over) return null;
      sentAt = Date.now();
      if (state === null) {
        end();
        return 'event: over\ndata: {}\n\n';
      }
      if (state !== last) {
        const first = last === null ? 'retry: 2000\n' : '';
        last = state;
        return `${first}event: state\ndata: ${state}\n\n`;
      }
      if (isBeat) return 'event: beat\ndata: {}\n\n';
    }
  }

  /** False when nothing was heard for as long as a beat. */
  function somethingHeard(): Promise<boolean> {
    if (changed || over) return Promise.resolve(true);
    return new Promise((done) => {
      const timer = setTimeout(() => done(false), beatEvery);
      wake = () => {
        clearTimeout(timer);
        done(true);
      };
    });
  }

  return new Response(body, { headers });
}

const encoder = new TextEncoder();

const headers = {
  'content-type': 'text/event-stream; charset=utf-8',
  // no-transform: neither this server nor one before it may compress, and so hold back, what is sent (RFC 9111,
  // 5.2.2.6).
  'cache-control': 'no-store, no-transform',
  // Several proxies read this and then pass on at once.
  'x-accel-buffering': 'no',
};
