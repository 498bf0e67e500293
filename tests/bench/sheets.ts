// The critique sheets of a class in one file: how long it takes, how long anybody else waits meanwhile, and what memory
// it needs.   npm run bench -- sheets                 300 students: the released sheets of the demo (ten lines, real faces), over and over
//   SHEETS_STUDENTS=100                     asks for fewer; SHEETS_KEEP=FILE.pdf keeps the file
import { createWriteStream, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as wait } from 'node:timers/promises';

const count = Number(process.env.SHEETS_STUDENTS ?? 300);

export default async function benchSheets() {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-bench-'));
  try {
    const { classSetPdf, students } = await classOf(`file:${path.join(folder, 'sheets.db')}`);
    const idle = await watched(() => wait(3000));
    console.log(
      `  nothing to do, 3 s                 longest wait p99 ${idle.p99.toFixed(0)} ms, most ${idle.most.toFixed(0)} ms`,
    );
    for (const size of [Math.min(30, count), count]) {
      const set = { course: 'Lettering', exercise: 'Signs for a harbour', roundNumber: 1, students: students(size) };
      let [bytes, firstMs] = [0, 0];
      const keep = size === count && process.env.SHEETS_KEEP ? createWriteStream(process.env.SHEETS_KEEP) : null;
      const run = await watched(async (begun) => {
        for await (const chunk of classSetPdf(set, 'a4', new Date()) as unknown as AsyncIterable<Uint8Array>) {
          if (bytes === 0) firstMs = performance.now() - begun;
          bytes += chunk.length;
          keep?.write(chunk);
        }
      });
      keep?.end();
      console.log(
        `  ${String(size).padStart(3)} sheets, ${(bytes / 1e6).toFixed(1)} MB   ${(run.ms / 1000).toFixed(1)} s, ${(run.ms / size).toFixed(0)} ms a sheet, first bytes after ${(firstMs / 1000).toFixed(1)} s`,
      );
      console.log(
        `      others wait p50 ${run.p50.toFixed(0)} ms, p99 ${run.p99.toFixed(0)} ms, most ${run.most.toFixed(0)} ms; heap at most ${run.heapMb.toFixed(0)} MB over the ${run.before.toFixed(0)} MB before`,
      );
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The demo in a database of its own; its released sheets as those of as many students as are asked for. */
async function classOf(url: string) {
  Object.assign(process.env, { DATABASE_URL: url, DATA_DIR: path.dirname(url.slice('file:'.length)) });
  const [
    { applyMigrations },
    { fillDemo },
    { scopedData },
    { database },
    { findRelease },
    { sheetOf },
    { classSetPdf },
  ] = await Promise.all([
    import('@/lib/data/migrate/apply'),
    import('@/lib/bin/start/demo'),
    import('@/lib/data'),
    import('@/lib/data/client'),
    import('@/lib/release/released'),
    import('@/lib/export/sheet/sheet-of'),
    import('@/lib/export/sheet/class-set-pdf'),
  ]);
  await applyMigrations(url);
  await fillDemo(url);
  const data = scopedData({ kind: 'system', reason: 'bench' });
  const released = await database().release.findMany({ select: { proofId: true } });
  const students = (size: number) =>
    Array.from({ length: size }, (_, index) => {
      const [{ proofId }, who] = [released[index % released.length]!, `Student ${index + 1}`];
      return {
        who,
        read: async () => {
          const release = (await findRelease(data, proofId, false))!;
          return sheetOf(data, proofId, { ...release, release, who, hidden: false });
        },
      };
    });
  return { classSetPdf, students };
}

/**
 * Runs it, and says how long something else that is ready had to wait for its turn (over the 10 ms at which it is
 * looked), and what the heap held at most.
 */
async function watched(work: (begun: number) => Promise<void>) {
  (globalThis as { gc?: () => void }).gc?.();
  const before = process.memoryUsage().heapUsed / 1e6;
  let most = 0;
  const look = setInterval(() => {
    most = Math.max(most, process.memoryUsage().heapUsed / 1e6);
  }, 50);
  const delay = monitorEventLoopDelay({ resolution: 10 });
  delay.enable();
  const begun = performance.now();
  await work(begun);
  const ms = performance.now() - begun;
  delay.disable();
  clearInterval(look);
  const over = (nanoseconds: number) => Math.max(0, nanoseconds / 1e6 - 10);
  return {
    ms,
    p50: over(delay.percentile(50)),
    p99: over(delay.percentile(99)),
    most: over(delay.max),
    heapMb: Math.max(0, most - before),
    before,
  };
}
