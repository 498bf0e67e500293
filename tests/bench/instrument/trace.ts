import type { CDPSession } from '@playwright/test';

type TraceEvent = {
  name: string;
  ph: string;
  ts: number;
  dur?: number;
  tdur?: number;
  pid: number;
  tid: number;
  args?: { data?: { type?: string }; name?: string };
};

/** `work` per change, and all `tasks` from the first change on, in ms the thread itself ran. */
export type Traced = { readonly work: number[]; readonly tasks: number[] };

/**
 * Main-thread work of the page per change, in ms: script, style, layout and paint of all tasks from one key or pointer
 * event up to the next. The page must be left alone meanwhile: any requested frame counts.
 *
 * Times are the thread's own processor time (`tdur`), so that other processes don't count. A throttled browser makes
 * the thread spin, and that counts: the same loop has 21 ms, and throttled four-fold 80 to 87, on a busy machine up to
 * 104.
 */
export async function traceChanges(cdp: CDPSession, act: () => Promise<void>): Promise<Traced> {
  const events: TraceEvent[] = [];
  const collect = ({ value }: { value: unknown[] }) => events.push(...(value as TraceEvent[]));
  cdp.on('Tracing.dataCollected', collect);
  await cdp.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: {
      includedCategories: ['devtools.timeline', 'disabled-by-default-devtools.timeline', '__metadata'],
      excludedCategories: ['*'],
    },
  });
  await act();
  const complete = new Promise((done) => cdp.once('Tracing.tracingComplete', done));
  await cdp.send('Tracing.end');
  await complete;
  cdp.off('Tracing.dataCollected', collect);
  const thread = threadOf(events);
  const own = events.filter(({ ph, pid, tid }) => ph === 'X' && pid === thread?.pid && tid === thread.tid);
  const first = Math.min(...own.filter(isChange).map(({ ts }) => ts));
  const tasks = own.filter(({ name, ts, dur }) => name === 'RunTask' && ts + (dur ?? 0) >= first);
  return { work: sumByChange(own), tasks: tasks.map(spent) };
}

/**
 * Pieces of work that belong to a change. Each is a complete event on the main thread; nested ones are counted once.
 */
const WORK = [
  'EventDispatch',
  'FireAnimationFrame',
  'UpdateLayoutTree',
  'Layout',
  'PrePaint',
  'Paint',
  'Layerize',
  'Commit',
  'RunMicrotasks',
  'TimerFire',
  'HitTest',
];

function sumByChange(events: TraceEvent[]): number[] {
  const pieces = events
    .filter(({ name }) => WORK.includes(name))
    .sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
  const sums: number[] = [];
  const parts = new Map<string, number>();
  let end = -Infinity;
  for (const piece of pieces) {
    if (isChange(piece)) sums.push(0);
    if (piece.ts < end || sums.length === 0) continue;
    end = piece.ts + (piece.dur ?? 0);
    sums[sums.length - 1]! += spent(piece);
    if (process.env.PARTS) parts.set(piece.name, (parts.get(piece.name) ?? 0) + spent(piece));
  }
  if (process.env.PARTS)
    console.error([...parts].map(([name, sum]) => `${name} ${(sum / sums.length).toFixed(2)}`).join('  '));
  return sums;
}

const isChange = ({ name, args }: TraceEvent): boolean =>
  name === 'EventDispatch' && ['keydown', 'pointermove'].includes(args?.data?.type ?? '');
const spent = ({ tdur, dur }: TraceEvent): number => (tdur ?? dur ?? 0) / 1000;

/** The thread on which the page's events were dispatched. */
function threadOf(events: TraceEvent[]): { pid: number; tid: number } | undefined {
  return events.find(isChange);
}
