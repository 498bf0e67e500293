// What a class does, beside trivial routes of the same server in the same run.
//   npm run bench -- class     300 students × 12 specimens × 3 rounds, then 30 and 3,000 students
//   CLASS_SIZES=30,300 and CLASS_SECONDS=10 ask for less
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { applyMigrations } from '@/lib/data/migrate/apply';
import { openDatabase } from '@/lib/data/open';
import { fillClass, type Filled } from './class/fill';
import { ask, load, type Ask, type Load } from './class/load';
import { buildForBench, secret, serveForBench } from './class/server';

const sizes = (process.env.CLASS_SIZES ?? '300,30,3000').split(',').map(Number);
const seconds = Number(process.env.CLASS_SECONDS ?? 10);
const port = Number(process.env.CLASS_PORT ?? 3470);

export default async function benchClass() {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-bench-'));
  try {
    buildForBench();
    for (const students of sizes) await measureOne(`file:${path.join(folder, `${students}.db`)}`, students);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measureOne(url: string, students: number) {
  await applyMigrations(url);
  const db = openDatabase(url);
  const begun = performance.now();
  const filled = await fillClass(db, { students, specimens: 12, rounds: 3 }, secret, new Date());
  await db.$disconnect();
  console.log(`${students} students × 12 specimens × 3 rounds (filled in ${((performance.now() - begun) / 1000).toFixed(0)} s), 10 connections, ${seconds} s each`);
  const server = await serveForBench(url, port);
  try {
    await writes(server.origin, filled);
    await pages(server.origin, filled);
  } finally {
    server.stop();
  }
}

/** Baseline and subject in turn, twice, so that a machine that warms up or slows down favours neither. */
async function writes(origin: string, filled: Filled) {
  const save = autosaves(filled);
  await load(origin, oneRow(filled), 2);
  await load(origin, save, 2);
  const [row, kept]: [Load[], Load[]] = [[], []];
  for (let turn = 0; turn < 2; turn += 1) {
    row.push(await load(origin, oneRow(filled), seconds));
    kept.push(await load(origin, save, seconds));
  }
  line('write of one row', mean(row));
  line('autosave', mean(kept), `${((100 * mean(kept).perSecond) / mean(row).perSecond).toFixed(0)} % of it (wanted: 85 % or more)`);
}

async function pages(origin: string, { exerciseId, instructorCookie }: Filled) {
  const page = (where: string) => (): Ask => ({ path: where, cookie: instructorCookie });
  const where = `/exercises/${exerciseId}/class`;
  const bytes = await ask(origin, undefined, page(where)()).catch((error: Error) => error);
  if (bytes instanceof Error) return console.log(`  class page: not measured. ${bytes.message.slice(0, 120)}`);
  await load(origin, page('/baseline'), 2);
  const trivial = await load(origin, page('/baseline'), seconds);
  const summary = await load(origin, page(where), seconds);
  line('trivial page', trivial);
  line('class page', summary, `${(trivial.perSecond / summary.perSecond).toFixed(2)} times its cost (wanted: 2.5 or less), ${(bytes / 1000).toFixed(0)} kB`);
}

const oneRow = ({ students }: Filled) => (connection: number): Ask => ({
  path: '/api/baseline', method: 'PUT', cookie: students[connection % students.length]!.cookie, body: { name: `Student ${Math.random()}` },
});

/** Each connection is one student at one draft, who changes one gap after another. */
function autosaves({ students, pairs }: Filled) {
  const versions = new Map<number, number>();
  return (connection: number): Ask => {
    const version = versions.get(connection) ?? 0;
    versions.set(connection, version + 1);
    const { cookie, draftIds } = students[connection % students.length]!;
    const offsets = Array.from({ length: pairs }, (_, pair) => (version + pair) % 40);
    return { path: `/api/drafts/${draftIds[0]}`, method: 'PUT', cookie, body: { baseVersion: version, clientId: 'bench', seq: version + 1, spacing: { tracking: 0, offsets } } };
  };
}

function mean(loads: Load[]): Load {
  const over = (key: keyof Load) => loads.reduce((sum, each) => sum + each[key], 0) / loads.length;
  return { perSecond: over('perSecond'), p50: over('p50'), p95: over('p95'), answers: over('answers') };
}

function line(name: string, { perSecond, p50, p95 }: Load, more = '') {
  console.log(`  ${name.padEnd(18)} ${perSecond.toFixed(0).padStart(6)} /s   median ${p50.toFixed(0)} ms, p95 ${p95.toFixed(0)} ms   ${more}`);
}
