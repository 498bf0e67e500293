import type { CDPSession } from '@playwright/test';

type TraceEvent = { name: string; ph: string; ts: number; dur?: number; tdur?: number; pid: number; tid: number; args?: { data?: { type?: string }; name?: string } };

/**
 * Main-thread work of the page per change, in ms: script, style, layout and paint of all tasks
 * from one key or pointer event up to the frame after it. What the test harness itself evaluates is left out.
 */
export async function workPerChange(cdp: CDPSession, act: () => Promise<void>): Promise<number[]> {
  const events: TraceEvent[] = [];
  const collect = ({ value }: { value: unknown[] }) => events.push(...(value as TraceEvent[]));
  cdp.on('Tracing.dataCollected', collect);
  await cdp.send('Tracing.start', { transferMode: 'ReportEvents', traceConfig: { includedCategories: ['devtools.timeline', '__metadata'], excludedCategories: ['*'] } });
  await act();
  const complete = new Promise((done) => cdp.once('Tracing.tracingComplete', done));
  await cdp.send('Tracing.end');
  await complete;
  cdp.off('Tracing.dataCollected', collect);
  return sumByChange(events);
}

/** Pieces of work that belong to a change. Each is a complete event on the main thread; nested ones are counted once. */
const WORK = ['EventDispatch', 'FireAnimationFrame', 'UpdateLayoutTree', 'Layout', 'PrePaint', 'Paint', 'Layerize', 'Commit', 'RunMicrotasks', 'TimerFire', 'HitTest'];

function sumByChange(events: TraceEvent[]): number[] {
  const thread = threadOf(events);
  const pieces = events
    .filter(({ name, ph, pid, tid }) => ph === 'X' && WORK.includes(name) && pid === thread?.pid && tid === thread.tid)
    .sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
  const sums: number[] = [];
  const parts = new Map<string, number>();
  let end = -Infinity;
  for (const piece of pieces) {
    const type = piece.name === 'EventDispatch' ? piece.args?.data?.type : undefined;
    if (type === 'keydown' || type === 'pointermove') sums.push(0);
    if (piece.ts < end || sums.length === 0) continue;
    end = piece.ts + (piece.dur ?? 0);
    // Time the thread itself ran, where the trace has it: a busy machine does not count against the bench.
    const spent = (piece.tdur ?? piece.dur ?? 0) / 1000;
    sums[sums.length - 1]! += spent;
    if (process.env.PARTS) parts.set(piece.name, (parts.get(piece.name) ?? 0) + spent);
  }
  if (process.env.PARTS) console.error([...parts].map(([name, sum]) => `${name} ${(sum / sums.length).toFixed(2)}`).join('  '));
  return sums;
}

/** The thread on which the page's events were dispatched. */
function threadOf(events: TraceEvent[]): { pid: number; tid: number } | undefined {
  return events.find(({ name, args }) => name === 'EventDispatch' && ['keydown', 'pointermove'].includes(args?.data?.type ?? ''));
}
