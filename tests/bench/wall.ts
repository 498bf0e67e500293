// From a proof being sent to the projector having painted it, with a room of phones connected, beside a bare page of
// the same server asked for at the same moments.
//   npm run bench -- wall      60 lines on the wall, 60 phones; WALL_LINES, WALL_PHONES and WALL_SENDS ask for others
//   WALL_DATABASE=postgresql   over PostgreSQL, the projector and the phones at one process and the sender at another
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from '@playwright/test';
import { startScratchServer } from '@/lib/bin/scratch-postgresql';
import { chromium as chromiumPath } from '@/lib/bin/test/programs.mjs';
import { newId } from '@/lib/data/ids';
import { applyMigrations } from '@/lib/data/migrate/apply';
import { openDatabase } from '@/lib/data/open';
import { newWallCode, newWallSettings, storedWallSettings } from '@/lib/wall/walls';
import { fillClass } from './class/fill';
import { ask } from './class/load';
import { buildForBench, secret, serveForBench } from './class/server';
import { openPhones } from './wall/phones';
import { openProjector } from './wall/projector';

const lines = Number(process.env.WALL_LINES ?? 60);
const phones = Number(process.env.WALL_PHONES ?? 60);
const sends = Number(process.env.WALL_SENDS ?? 60);
const port = Number(process.env.WALL_PORT ?? 3474);
const onPostgresql = process.env.WALL_DATABASE === 'postgresql';

export default async function benchWall() {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-bench-'));
  const scratch = onPostgresql ? await startScratchServer() : null;
  const stops: (() => unknown)[] = [() => scratch?.stop(), () => rmSync(folder, { recursive: true, force: true })];
  try {
    const url = scratch ? await scratch.createDatabase('bench') : `file:${path.join(folder, 'wall.db')}`;
    const { filled, wall, senders } = await prepare(url);
    if (process.env.WALL_BUILT !== 'yes') buildForBench();
    const server = await serveForBench(url, port);
    stops.unshift(server.stop);
    const second = onPostgresql ? await serveForBench(url, port + 1) : server;
    if (second !== server) stops.unshift(second.stop);

    const browser = await chromium.launch({
      executablePath: chromiumPath() ?? undefined,
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    });
    stops.unshift(() => browser.close());
    const projector = await openProjector(browser, server.origin, `/wall/${wall.id}`, filled.instructorCookie, lines);
    const room = await openPhones(server.origin, wall.code, phones);
    stops.unshift(room.close);

    const page = () => ask(server.origin, undefined, { path: '/baseline', cookie: filled.instructorCookie });
    const [toWall, toAnswer, bare]: [number[], number[], number[]] = [[], [], []];
    for (let turn = -5; turn < sends; turn += 1) {
      const { cookie, draft } = senders[(turn + 5) % senders.length]!;
      await nudge(second.origin, cookie, draft);
      const began = now();
      const painted = projector.nextPainted();
      const answered = ask(second.origin, undefined, {
        path: '/api/baseline/proofs',
        method: 'POST',
        cookie,
        body: { exerciseId: filled.exerciseId, requestKey: newId(), reasoning: 'A little closer.', zoom: 1 },
      }).then(now);
      const [paintedAt, answeredAt] = await Promise.all([painted, answered]);
      const bareBegan = performance.now();
      await page();
      // The first few warm everything up.
      if (turn < 0) continue;
      toWall.push(paintedAt - began);
      toAnswer.push(answeredAt - began);
      bare.push(performance.now() - bareBegan);
    }
    console.log(
      `${lines} lines on the wall, ${phones} phones connected, ${onPostgresql ? 'PostgreSQL, sender and projector at two processes' : 'SQLite, one process'}, ${sends} proofs sent one after the other`,
    );
    line('bare page, to its last byte', bare);
    line('proof, to its answer', toAnswer);
    line('proof, to painted on the wall', toWall, '(wanted: under 1,000 ms)');
    console.log(
      `  messages to phones ${room.heard()}, the least any phone got ${room.least()}; each proof is one change`,
    );
  } finally {
    for (const stop of stops) await stop();
  }
}

/** A class whose every student has sent, and a wall of its one line. */
async function prepare(url: string) {
  await applyMigrations(url);
  const db = openDatabase(url);
  try {
    const filled = await fillClass(db, { students: lines, specimens: 1, rounds: 1 }, secret, new Date());
    await db.round.updateMany({ data: { dueAt: null, state: 'open' } });
    const { id: roundId } = await db.round.findFirstOrThrow();
    const { id: specimenId } = await db.specimen.findFirstOrThrow();
    const wall = { id: newId(), code: newWallCode() };
    await db.wall.create({
      data: { ...wall, roundId, specimenId, settings: storedWallSettings(newWallSettings()), openedAt: new Date() },
    });
    const senders = filled.students.map(({ cookie, draftIds }) => ({
      cookie,
      draft: { id: draftIds[0]!, version: 0, offsets: Array.from({ length: filled.pairs }, () => 0) },
    }));
    return { filled, wall, senders };
  } finally {
    await db.$disconnect();
  }
}

type Draft = { id: string; version: number; offsets: number[] };

/** The student changes one gap, so that what is sent differs from what hangs there. */
async function nudge(origin: string, cookie: string, draft: Draft): Promise<void> {
  draft.offsets = draft.offsets.map((offset, pair) =>
    pair === draft.version % draft.offsets.length ? offset - 7 : offset,
  );
  await ask(origin, undefined, {
    path: `/api/drafts/${draft.id}`,
    method: 'PUT',
    cookie,
    body: {
      baseVersion: draft.version,
      clientId: 'bench',
      seq: draft.version + 1,
      spacing: { tracking: 0, offsets: draft.offsets },
    },
  });
  draft.version += 1;
}

/** The clock of the machine, which the browser reads too. */
const now = () => performance.timeOrigin + performance.now();

function line(name: string, times: number[], more = '') {
  const sorted = [...times].sort((one, other) => one - other);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)]!.toFixed(0);
  console.log(
    `  ${name.padEnd(30)} p50 ${at(0.5).padStart(5)} ms   p95 ${at(0.95).padStart(5)} ms   most ${at(1).padStart(5)} ms   ${more}`,
  );
}
