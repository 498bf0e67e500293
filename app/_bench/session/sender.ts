import { type DeviceStore, type JournalScope, writeSync } from '@/shared/editing/journal';
import { advance, type Change, nextToSend, type SentChange, type Sync, type SyncEvent } from '@/shared/editing/sync';
import { fromWire, toWire } from '@/shared/editing/wire';
import { saveAnswerSchema, type SaveRequest } from '@/shared/schemas/draft';

type Parts = {
  address: string | null;
  draftId: string;
  device: DeviceStore;
  scope: JournalScope;
  sync(): Sync;
  setSync(sync: Sync): void;
  /** Reads the journal again when this window takes over the sending. */
  reopen(): void;
};

export type Sender = { kick(): void; flush(): void; stop(): void };

/**
 * A burst of changes is sent as one when it pauses, or at intervals if it doesn't. The journal has each change at once.
 */
const REST_MS = 300;
const AT_LEAST_EVERY_MS = 2_000;
const SIGNED_OUT_WAIT_MS = 20_000;

/**
 * Sends unsent changes, one request at a time. Of several windows on one draft only the one that holds the lock sends.
 */
export function startSender(parts: Parts): Sender {
  const { address } = parts;
  // Stops waiting for the lock, or releases it. Unsent changes are sent first when the bench is left.
  const ending = new AbortController();
  let leaving = false;
  let maySend = false;
  let busy = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let gathering: { since: number; last: number } | null = null;

  const apply = (event: SyncEvent, settles: Change | null = null) => {
    const sync = advance(parts.sync(), event);
    writeSync(parts.device, parts.scope, sync, settles);
    parts.setSync(sync);
  };

  async function pump(): Promise<void> {
    clearTimeout(timer);
    timer = undefined;
    gathering = null;
    if (busy || !maySend || address === null || ending.signal.aborted) return;
    if (!nextToSend(parts.sync())) {
      if (leaving) ending.abort();
      return;
    }
    apply({ kind: 'sending' });
    const change = nextToSend(parts.sync());
    if (!change) return;
    busy = true;
    const { outcome, notBeforeMs } = await sendChange(address, parts.draftId, change);
    busy = false;
    apply(outcome, outcome.kind === 'accepted' ? change : null);
    const wait = waitAfter(parts.sync(), notBeforeMs);
    // Leaving doesn't wait for a server that doesn't answer: the journal has the change, and the next bench sends it.
    if (leaving && wait !== 0) ending.abort();
    else if (wait !== null) timer = setTimeout(pump, wait);
  }

  const wake = () => {
    if (document.visibilityState !== 'hidden') void pump();
  };
  window.addEventListener('online', wake);
  window.addEventListener('focus', wake);
  document.addEventListener('visibilitychange', wake);
  // Without sending there is nothing to take turns for.
  if (address !== null)
    void holdLock(`kerncrit-send/${parts.scope.personKey}/${parts.draftId}`, ending.signal, () => {
      maySend = true;
      parts.reopen();
      void pump();
    });

  function gather(): void {
    if (!gathering) return void pump();
    const left = Math.min(gathering.last + REST_MS, gathering.since + AT_LEAST_EVERY_MS) - performance.now();
    if (left > 1) timer = setTimeout(gather, left);
    else void pump();
  }

  return {
    kick: () => {
      const last = performance.now();
      gathering = { since: gathering?.since ?? last, last };
      timer ??= setTimeout(gather, REST_MS);
    },
    flush: () => void pump(),
    stop: () => {
      leaving = true;
      window.removeEventListener('online', wake);
      window.removeEventListener('focus', wake);
      document.removeEventListener('visibilitychange', wake);
      if (!maySend) ending.abort();
      else if (!busy) void pump();
    },
  };
}

/** How long until the next try; null = nothing to send until something changes. */
function waitAfter(sync: Sync, notBeforeMs: number): number | null {
  if (!nextToSend(sync)) return null;
  if (sync.trouble.kind === 'signed out') return SIGNED_OUT_WAIT_MS;
  if (sync.trouble.kind === 'none') return 0;
  const attempts = sync.trouble.kind === 'unreachable' ? sync.trouble.attempts : 1;
  // Spread out, so that a whole class doesn't retry at once when the network returns.
  const usual = Math.min(20_000, 500 * 2 ** Math.min(attempts, 6)) * (0.75 + Math.random() / 2);
  return Math.max(usual, notBeforeMs * (1 + Math.random() / 4));
}

/**
 * Holds the lock until the signal ends it; a browser without locks lets every window send, which the server tolerates.
 */
async function holdLock(name: string, ending: AbortSignal, held: () => void): Promise<void> {
  if (!navigator.locks) return held();
  try {
    await navigator.locks.request(name, { signal: ending }, () => {
      // The signal may have ended just before this: then no event follows, and the lock would never be released.
      if (ending.aborted) return;
      held();
      return new Promise<void>((release) => ending.addEventListener('abort', () => release(), { once: true }));
    });
  } catch {
    // Ended while waiting for the lock.
  }
}

const PATIENCE_MS = 15_000;

type Outcome = {
  outcome: SyncEvent;
  /** How long the server asked to be left alone, by Retry-After; 0 where it didn't. */
  notBeforeMs: number;
};

/** Sends one change and returns the outcome. Never throws. */
async function sendChange(address: string, draftId: string, change: SentChange): Promise<Outcome> {
  const body: SaveRequest = {
    draftId,
    baseVersion: change.baseVersion,
    clientId: change.clientId,
    seq: change.seq,
    ...toWire(change.document),
  };
  const giveUp = new AbortController();
  const timer = setTimeout(() => giveUp.abort(), PATIENCE_MS);
  try {
    const response = await fetch(address, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', accept: 'application/json' },
      body: JSON.stringify(body),
      credentials: 'same-origin',
      cache: 'no-store',
      // Lets the last change go out while the page is being closed.
      keepalive: true,
      signal: giveUp.signal,
    });
    return { outcome: await outcomeOf(response), notBeforeMs: retryAfterMs(response) };
  } catch {
    return { outcome: { kind: 'unreachable' }, notBeforeMs: 0 };
  } finally {
    clearTimeout(timer);
  }
}

/** Retry-After in seconds (RFC 9110, 10.2.3), at most two minutes: a change should not wait for longer. */
function retryAfterMs(response: Response): number {
  const seconds = Number(response.headers.get('retry-after') ?? 0);
  return Number.isFinite(seconds) && seconds > 0 ? Math.min(seconds, 120) * 1000 : 0;
}

async function outcomeOf(response: Response): Promise<SyncEvent> {
  // A redirect to a sign-in page also means that the session is over.
  if (response.status === 401 || response.redirected) return { kind: 'signed out' };
  const body = (await response.json().catch(() => null)) as { error?: { message?: unknown; body?: unknown } } | null;
  if (response.ok || response.status === 409) {
    const answer = saveAnswerSchema.safeParse(body?.error?.body ?? body);
    if (!answer.success) return { kind: 'unreachable' };
    if ('version' in answer.data) return { kind: 'accepted', version: answer.data.version };
    const { version, ...stored } = answer.data.conflict;
    return { kind: 'conflicted', theirs: { version, document: fromWire(stored) } };
  }
  const mayPass = response.status >= 500 || [408, 425, 429].includes(response.status);
  if (mayPass) return { kind: 'unreachable' };
  const message = body?.error?.message;
  return { kind: 'refused', reason: typeof message === 'string' ? message : `It answered ${response.status}.` };
}
