// What a class does, beside trivial routes of the same server in the same run.
//   npm run bench -- class     300 students × 12 specimens × 3 rounds with writes and the desk, then pages at 30, 300 and 3,000
//   CLASS_SIZES=30,300 CLASS_SECONDS=10 CLASS_ANSWERS=60 ask for less; CLASS_PARTS=writes,desk,blocks,pages for some of it;
//   CLASS_BUILT=yes takes the build that is there (made by an earlier run of this benchmark)
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { applyMigrations } from '@/lib/data/migrate/apply';
import { openDatabase } from '@/lib/data/open';
import { blocksOf, printBlocks } from './class/blocks';
import { deskInBrowser, nextProofOnServer, noteOnServer, type Waits } from './class/desk';
import { fillClass, type Filled } from './class/fill';
import { load, type Ask, type Load } from './class/load';
import { pageCosts, printCosts } from './class/pages';
import { buildForBench, secret, serveForBench, type BenchServer } from './class/server';

const sizes = (process.env.CLASS_SIZES ?? '30,300,3000').split(',').map(Number);
const parts = (process.env.CLASS_PARTS ?? 'writes,desk,blocks,pages').split(',');
const seconds = Number(process.env.CLASS_SECONDS ?? 10);
const answers = Number(process.env.CLASS_ANSWERS ?? 60);
const connections = 10;
const port = Number(process.env.CLASS_PORT ?? 3470);
/** The size of which autosave and the desk are measured. */
const usual = sizes.includes(300) ? 300 : sizes[0]!;

export default async function benchClass() {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-bench-'));
  try {
    if (process.env.CLASS_BUILT !== 'yes') buildForBench();
    const costs = [];
    for (const students of sizes) costs.push(await measureOne(`file:${path.join(folder, `${students}.db`)}`, students));
    if (parts.includes('pages')) printCosts(costs);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measureOne(url: string, students: number) {
  await applyMigrations(url);
  const db = openDatabase(url);
  const begun = performance.now();
  const filled = await fillClass(db, { students, specimens: 12, rounds: 3 }, secret, new Date());
  const few = await fillClass(db, { students: 2, specimens: 12, rounds: 3 }, secret, new Date());
  await db.$disconnect();
  console.log(
    `${students} students × 12 specimens × 3 rounds (filled in ${((performance.now() - begun) / 1000).toFixed(0)} s)`,
  );
  const server = await serveForBench(url, port);
  try {
    if (parts.includes('writes') && students === usual) await writes(server, filled);
    if (parts.includes('blocks')) printBlocks(students, await blocksOf(server, filled, few));
    if (parts.includes('desk') && students === usual) await desk(server.origin, filled);
    return {
      students,
      ...(parts.includes('pages') ? await pageCosts(server, filled, answers) : { trivialMs: Number.NaN, pages: [] }),
    };
  } finally {
    server.stop();
  }
}

/** Baseline and subject in turn, four times, so that a machine that warms up or slows down favours neither. */
async function writes({ origin, processorMs }: BenchServer, filled: Filled) {
  const save = autosaves(filled);
  await load(origin, oneRow(filled), 2);
  await load(origin, save, 2);
  const [row, kept] = [
    { loads: [] as Load[], ms: 0 },
    { loads: [] as Load[], ms: 0 },
  ];
  for (let turn = 0; turn < 4; turn += 1) {
    for (const [sum, next] of turn % 2 === 0
      ? ([
          [row, oneRow(filled)],
          [kept, save],
        ] as const)
      : ([
          [kept, save],
          [row, oneRow(filled)],
        ] as const)) {
      const before = processorMs();
      sum.loads.push(await load(origin, next, seconds / 2));
      sum.ms += processorMs() - before;
    }
  }
  const each = ({ loads, ms }: typeof row) => ms / loads.reduce((sum, one) => sum + one.answers, 0);
  console.log(`  10 connections, four times ${seconds / 2} s each`);
  line('write of one row', mean(row.loads), `${each(row).toFixed(2)} ms of processor each`);
  line(
    'autosave',
    mean(kept.loads),
    `${each(kept).toFixed(2)} ms of processor each; ${((100 * mean(kept.loads).perSecond) / mean(row.loads).perSecond).toFixed(0)} % of its throughput (wanted: 90 % or more), by processor time ${((100 * each(row)) / each(kept)).toFixed(0)} %`,
  );
}

async function desk(origin: string, filled: Filled) {
  waited('next proof, the server’s part', await nextProofOnServer(origin, filled, 100), '');
  waited('note, the server’s part', await noteOnServer(origin, filled, 100), '');
  const { next, note } = await deskInBrowser(origin, filled, 63);
  waited('next proof, key to usable', next, '(wanted: p95 under 300 ms)');
  waited('note, key to saved', note, '(wanted: p95 under 100 ms)');
}

const waited = (name: string, { p50, p95, most, times }: Waits, more: string) =>
  console.log(
    `  ${name.padEnd(30)} median ${p50.toFixed(0)} ms, p95 ${p95.toFixed(0)} ms, most ${most.toFixed(0)} ms of ${times}   ${more}`,
  );

/** Going round among students as the autosaves do: one person alone would use up their share of the server. */
function oneRow({ students }: Filled) {
  const turns = new Map<number, number>();
  return (connection: number): Ask => {
    const turn = turns.get(connection) ?? 0;
    turns.set(connection, turn + 1);
    return {
      path: '/api/baseline',
      method: 'PUT',
      cookie: students[(connection + turn * connections) % students.length]!.cookie,
      body: { name: `Student ${Math.random()}` },
    };
  };
}

/** Every student at one draft, who changes one gap after another; each connection goes round among its own. */
function autosaves({ students, pairs }: Filled) {
  const turns = new Map<number, number>();
  const own = Math.max(1, Math.floor(students.length / connections));
  return (connection: number): Ask => {
    const turn = turns.get(connection) ?? 0;
    turns.set(connection, turn + 1);
    const version = Math.floor(turn / own);
    const { cookie, draftIds } = students[connection * own + (turn % own)]!;
    const offsets = Array.from({ length: pairs }, (_, pair) => (version + pair) % 40);
    return {
      path: `/api/drafts/${draftIds[0]}`,
      method: 'PUT',
      cookie,
      body: { baseVersion: version, clientId: 'bench', seq: version + 1, spacing: { tracking: 0, offsets } },
    };
  };
}

function mean(loads: Load[]): Load {
  const over = (key: keyof Load) => loads.reduce((sum, each) => sum + each[key], 0) / loads.length;
  return { perSecond: over('perSecond'), p50: over('p50'), p95: over('p95'), answers: over('answers') };
}

function line(name: string, { perSecond, p50, p95 }: Load, more = '') {
  console.log(
    `  ${name.padEnd(18)} ${perSecond.toFixed(0).padStart(6)} /s   median ${p50.toFixed(0)} ms, p95 ${p95.toFixed(0)} ms   ${more}`,
  );
}
