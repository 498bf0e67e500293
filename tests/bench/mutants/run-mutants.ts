import { createHash } from 'node:crypto';
import { appendFileSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import path from 'node:path';
import { Worker } from 'node:worker_threads';
import { bundleTest, bundleWorker, mutateAll, type TestBundle } from './bundle-tests';
import { equivalent } from './equivalent';
import type { Mutant } from './mutate';
import type { Answer, Order, Touched } from './worker';

/** The rooms whose meaning the tests must hold; files of fitted numbers have none. */
const rooms = ['measure', 'scoring', 'marking', 'stats', 'class', 'editing', 'usual-range'];
const numbersOnly = /usual-range\/weights\.ts$/;
const resultsFolder = 'node_modules/.cache/mutants';

type Fate = { key: string; by: string | null };
type Plan = { mutant: Mutant; key: string; tests: readonly Touched[]; ms: number };

/** Tries every mutant of these rooms or files, prints a line for each room, and writes who survived. */
export async function runMutants(wanted: readonly string[]): Promise<void> {
  mkdirSync(resultsFolder, { recursive: true });
  const files = rooms
    .flatMap(filesOf)
    .filter((file) => wanted.length === 0 || wanted.some((each) => file.includes(`${each}`)));
  const { mutants, codeOf } = mutateAll(files);
  const bundles = await relatedTests(codeOf);
  const program = await bundleWorker();
  const crew = Array.from(
    { length: Number(process.env.MUTANT_WORKERS ?? cpus().length) },
    () => new Hand(program, bundles),
  );
  const measured = await measureAll(crew, bundles);
  const plans = plansOf(mutants, measured, codeOf, bundles);
  const known = readFates();
  const open = plans.filter(({ key }) => !known.has(key));
  process.stdout.write(
    `${mutants.length} mutants in ${files.length} files, ${measured.length} of ${bundles.length} test files, ${open.length} to try\n`,
  );
  await Promise.all(
    crew.map(async (hand) => {
      for (let plan = open.shift(); plan; plan = open.shift()) {
        const fate = { key: plan.key, by: await hand.attempt(plan) };
        known.set(plan.key, fate);
        appendFileSync(path.join(resultsFolder, 'fates.jsonl'), `${JSON.stringify(fate)}\n`);
      }
    }),
  );
  crew.forEach((hand) => hand.end());
  report(plans, known);
}

function filesOf(room: string): string[] {
  const folder = `shared/${room}`;
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => `${folder}/${name}`)
    .filter((file) => file.endsWith('.ts') && !numbersOnly.test(file))
    .sort();
}

async function relatedTests(codeOf: ReadonlyMap<string, string>): Promise<TestBundle[]> {
  const tests = readdirSync('tests/shared', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => `tests/shared/${name}`);
  const bundles: TestBundle[] = [];
  for (const test of tests.sort()) {
    const bundle = await bundleTest(test, codeOf);
    if (bundle.holds.length > 0 && !bundle.golden) bundles.push(bundle);
  }
  return bundles;
}

async function measureAll(crew: readonly Hand[], bundles: readonly TestBundle[]) {
  const waiting = [...bundles];
  const measured: (Answer & { kind: 'measured' })[] = [];
  await Promise.all(
    crew.map(async (hand) => {
      for (let bundle = waiting.shift(); bundle; bundle = waiting.shift()) {
        const answer = await hand.ask({ kind: 'measure', test: bundle.test }, 120_000);
        // What is too slow here, or needs more than this process, is no witness: that makes the count lower, never
        // higher.
        if (answer?.kind !== 'measured' || answer.failed.length > 0) {
          const why = answer?.kind === 'measured' ? answer.failed.join('; ') : 'did not end';
          process.stdout.write(`left out: ${bundle.test}: ${why}\n`);
        } else measured.push(answer);
      }
    }),
  );
  return measured;
}

/** Which tests are run for a mutant: those that execute its code, the quickest first. */
function plansOf(
  mutants: readonly Mutant[],
  measured: readonly (Answer & { kind: 'measured' })[],
  codeOf: ReadonlyMap<string, string>,
  bundles: readonly TestBundle[],
): Plan[] {
  const by = new Map<number, Touched[]>();
  const put = (id: number, test: Touched) => void by.set(id, [...(by.get(id) ?? []), test]);
  const loadMs = new Map(measured.map((each) => [each.test, each.loadMs]));
  for (const { loaded, touched } of measured) {
    // What runs while a file is loaded may show in each of its tests.
    for (const test of touched) for (const id of new Set([...test.ids, ...loaded])) put(id, test);
  }
  const codeOfTest = new Map(bundles.map(({ test, code }) => [test, hash(code)]));
  return mutants.map((mutant) => {
    const tests = (by.get(mutant.id) ?? []).toSorted((one, other) => one.ms - other.ms);
    const names = [...new Set(tests.map(({ test }) => test))].sort();
    // Everything that decides its fate: the change, and every program that is run.
    const given = [
      mutant.file,
      mutant.from,
      mutant.to,
      mutant.start,
      hash(codeOf.get(mutant.file)!),
      ...names.map((name) => codeOfTest.get(name)),
    ];
    const ms =
      tests.reduce((sum, { ms: each }) => sum + each, 0) + names.reduce((sum, name) => sum + loadMs.get(name)!, 0);
    return { mutant, tests, ms, key: hash(given.join('\0')) };
  });
}

const hash = (text: string) => createHash('sha256').update(text).digest('hex').slice(0, 20);

function readFates(): Map<string, Fate> {
  const file = path.join(resultsFolder, 'fates.jsonl');
  if (!existsSync(file)) return new Map();
  const lines = readFileSync(file, 'utf8').split('\n').filter(Boolean);
  return new Map(lines.map((line) => JSON.parse(line) as Fate).map((fate) => [fate.key, fate]));
}

/** One worker, replaced when a mutant keeps it too long. */
class Hand {
  private worker: Worker;

  constructor(
    private readonly program: string,
    private readonly bundles: readonly TestBundle[],
  ) {
    this.worker = this.begin();
  }

  private begin(): Worker {
    return new Worker(this.program, {
      eval: true,
      workerData: { bundles: this.bundles },
      resourceLimits: { maxOldGenerationSizeMb: 1500 },
    });
  }

  /** Null when it took too long, or the worker broke. */
  ask(order: Order, limit: number): Promise<Answer | null> {
    const { worker } = this;
    return new Promise((resolve) => {
      const done = (answer: Answer | null) => {
        clearTimeout(timer);
        worker.off('message', done);
        worker.off('error', broken);
        if (answer === null) {
          void worker.terminate();
          this.worker = this.begin();
        }
        resolve(answer);
      };
      const broken = (error: Error) => {
        if (process.env.MUTANTS_TALK) process.stdout.write(`${String(error)}\n`);
        done(null);
      };
      const timer = setTimeout(() => done(null), limit);
      worker.on('message', done);
      worker.on('error', broken);
      worker.postMessage(order);
    });
  }

  /** @returns the test that noticed, or null */
  async attempt({ mutant, tests, ms }: Plan): Promise<string | null> {
    if (tests.length === 0) return null;
    const order = { kind: 'try', id: mutant.id, tests: tests.map(({ test, index }) => ({ test, index })) } as const;
    // A new worker compiles its programs first.
    const answer = await this.ask(order, 20_000 + 10 * ms);
    return answer === null ? 'it never ended' : answer.kind === 'tried' ? answer.by : null;
  }

  end(): void {
    void this.worker.terminate();
  }
}

function report(plans: readonly Plan[], known: ReadonlyMap<string, Fate>): void {
  const alive = plans.filter(({ key }) => known.get(key)!.by === null);
  const set = new Set(alive.filter(({ mutant }) => isEquivalent(mutant)));
  const rows = rooms.flatMap((room) => {
    const all = plans.filter(({ mutant }) => mutant.file.startsWith(`shared/${room}/`));
    if (all.length === 0) return [];
    const survived = alive.filter(({ mutant }) => mutant.file.startsWith(`shared/${room}/`));
    const aside = survived.filter((plan) => set.has(plan)).length;
    return [{ room, all: all.length, aside, killed: all.length - survived.length }];
  });
  const sum = (key: 'all' | 'aside' | 'killed') => rows.reduce((total, row) => total + row[key], 0);
  for (const { room, all, aside, killed } of [
    ...rows,
    { room: 'all', all: sum('all'), aside: sum('aside'), killed: sum('killed') },
  ]) {
    const share = ((100 * killed) / (all - aside)).toFixed(1);
    process.stdout.write(
      `${room.padEnd(12)} ${killed} of ${all - aside} died (${share} %), ${aside} set aside as equivalent\n`,
    );
  }
  const survivors = alive
    .filter((plan) => !set.has(plan))
    .map(({ mutant: { file, line, from, to }, tests }) => {
      const short = (text: string) => text.replace(/\s+/g, ' ').slice(0, 110);
      return `${file}:${line}  ${short(from)}  →  ${to === '' ? '(left out)' : short(to)}${tests.length === 0 ? '  (no test comes by)' : ''}`;
    });
  writeFileSync(path.join(resultsFolder, 'survivors.txt'), `${survivors.join('\n')}\n`);
  process.stdout.write(`${survivors.length} survivors: ${path.join(resultsFolder, 'survivors.txt')}\n`);
}

/** Named by its file, its own text and what it becomes: line numbers move. */
const isEquivalent = ({ file, from, to }: Mutant): boolean =>
  equivalent.some((each) => `shared/${each.file}` === file && each.from === from && each.to === to);
