// What three hostile people do to everybody else: a student, a stranger with a wall's link and an instructor of another
// course, each with twenty connections that ask again as soon as they are answered.
//   npm run bench -- hostile     a class of 120 saves, quietly and beside them; the server on one core, clients on another
//   HOSTILE_SECONDS=20 and HOSTILE_ONLY=student ask for less; HOSTILE_BUILT=yes takes the build that is there
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { applyMigrations } from '@/lib/data/migrate/apply';
import { newId } from '@/lib/data/ids';
import { openDatabase } from '@/lib/data/open';
import { lineKey, newWallCode, newWallSettings, storedWallSettings } from '@/lib/wall/walls';
import { fillClass, type Filled } from './class/fill';
import { buildForBench, secret, serveForBench } from './class/server';
import { type Attack, attacks } from './hostile/attacks';
import { saveAsAClass, type Saves } from './hostile/saves';

const seconds = Number(process.env.HOSTILE_SECONDS ?? 60);
const port = Number(process.env.HOSTILE_PORT ?? 3842);
/** The class whose saves are timed; 300 have sent proofs in the hostile instructor's own course. */
const students = 120;
const connections = 20;
const only = (process.env.HOSTILE_ONLY ?? 'student,stranger,instructor').split(',');

export default async function benchHostile() {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-bench-'));
  try {
    if (process.env.HOSTILE_BUILT !== 'yes') buildForBench();
    await measure(`file:${path.join(folder, 'hostile.db')}`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measure(url: string) {
  await applyMigrations(url);
  const db = openDatabase(url);
  const others = await fillClass(db, { students, specimens: 12, rounds: 3 }, secret, new Date());
  const own = await fillClass(db, { students: 300, specimens: 12, rounds: 3 }, secret, new Date());
  const wall = await openWall(db, others);
  await db.$disconnect();
  const server = await serveForBench(url, port, cpus().length > 1 ? { core: 0 } : {});
  try {
    const hostile = attacks(others, own, wall).filter(({ name }) => only.includes(name));
    const save = saveAsAClass(server.origin, others.students.slice(1), others.pairs);
    // What a server loads and works out once is there before anything is timed, and so are the attackers' processes.
    const parties = await Promise.all(hostile.map((attack) => prepare(server.origin, attack)));
    await save(5);
    const quiet = await save(seconds);
    say('quiet', quiet);
    for (const { begin } of parties) begin();
    const beside = await save(seconds);
    const done = await Promise.all(parties.map(({ end }) => end()));
    say(`beside ${hostile.length === 3 ? 'all three' : only.join(' and ')}`, beside);
    for (const [place, { name }] of hostile.entries()) console.log(`  ${name}: ${done[place]}`);
    const times = beside.p95 / quiet.p95;
    console.log(
      `  p95 beside them ${times.toFixed(2)} times the quiet one (wanted: under 2): ${times < 2 ? 'reached' : 'MISSED'}; refused to the class: ${beside.refused}`,
    );
  } finally {
    server.stop();
  }
}

async function openWall(db: ReturnType<typeof openDatabase>, { exerciseId, specimenIds, courseId }: Filled) {
  const round = await db.round.findFirstOrThrow({ where: { exerciseId, number: 3 } });
  const member = await db.member.findFirstOrThrow({ where: { courseId, role: 'instructor' } });
  const student = await db.member.findFirstOrThrow({ where: { courseId, role: 'student' } });
  const settings = { ...newWallSettings(), pointing: 'show' as const };
  const code = newWallCode();
  await db.wall.create({
    data: {
      id: newId(),
      roundId: round.id,
      specimenId: specimenIds[0]!,
      code,
      settings: storedWallSettings(settings),
      openedById: member.id,
      openedAt: new Date(),
    },
  });
  return { code, line: lineKey(settings.salt, student.id) };
}

/** An attack in a process of its own, on the other core, which has asked for everything once. `end` gives its answers. */
async function prepare(origin: string, attack: Attack): Promise<{ begin: () => void; end: () => Promise<string> }> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'tests/bench/hostile/attacker.ts'], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const lines = createInterface(child.stdout)[Symbol.asyncIterator]();
  child.stdin.write(`${JSON.stringify({ origin, connections, asks: attack.asks })}\n`);
  await lines.next();
  return {
    begin: () => child.stdin.write('begin\n'),
    end: async () => {
      child.stdin.end();
      return String((await lines.next()).value);
    },
  };
}

const say = (name: string, { p50, p95, most, answers }: Saves) =>
  console.log(
    `  ${name.padEnd(18)} saves of ${students - 1} students, each every two seconds: median ${p50.toFixed(0)} ms, p95 ${p95.toFixed(1)} ms, most ${most.toFixed(0)} ms of ${answers}`,
  );
