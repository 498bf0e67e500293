// A worker of the mutants: holds every test program compiled, and tries one mutant after the other in them.
import { createRequire } from 'node:module';
import { performance } from 'node:perf_hooks';
import vm from 'node:vm';
import { parentPort, workerData } from 'node:worker_threads';
import fc from 'fast-check';
import type { TestBundle } from './bundle-tests';
import { takeTests, type CollectedTest } from './small-runner';

/** A test that touches mutants when it runs: how long it took, and which. */
export type Touched = { test: string; index: number; name: string; ms: number; ids: number[] };
export type Order =
  { kind: 'measure'; test: string } | { kind: 'try'; id: number; tests: readonly { test: string; index: number }[] };
export type Answer =
  | { kind: 'measured'; test: string; loaded: number[]; loadMs: number; touched: Touched[]; failed: string[] }
  | { kind: 'tried'; id: number; by: string | null };

const { bundles } = workerData as { bundles: TestBundle[] };
const programs = new Map<string, (...given: unknown[]) => void>();
let on = -1;
let noted: Set<number> | null = null;
Object.assign(globalThis, {
  __m(id: number): boolean {
    noted?.add(id);
    return id === on;
  },
});
// The same examples each time: a mutant that only some of them notice must not die by luck.
fc.configureGlobal({ seed: 20261130 });

const waited = new Map<string, unknown>();
const ready = import('harfbuzzjs').then((loaded) => waited.set('harfbuzzjs', loaded));

parentPort!.on('message', async (order: Order) => {
  await ready;
  parentPort!.postMessage(await follow(order));
});

async function follow(order: Order): Promise<Answer> {
  if (order.kind === 'measure') return measure(order.test);
  on = order.id;
  try {
    return { kind: 'tried', id: order.id, by: await firstFailing(order.tests) };
  } finally {
    on = -1;
  }
}

/** Loads a test's program anew, so that what is worked out at loading is worked out under the mutant. */
function load(test: string): CollectedTest[] {
  let program = programs.get(test);
  if (!program) {
    const { code } = bundles.find((bundle) => bundle.test === test)!;
    program = vm.runInThisContext(`(function(require, module, exports, __filename, __dirname){${code}\n})`, {
      filename: test,
    }) as typeof program & object;
    programs.set(test, program);
  }
  const own = { exports: {} };
  program(requireFor(test), own, own.exports, test, '.');
  return takeTests();
}

/** A package that waits while it is loaded can't be required: it is there already. */
function requireFor(test: string): (name: string) => unknown {
  const usual = createRequire(`${process.cwd()}/${test}`);
  return (name) => waited.get(name) ?? usual(name);
}

async function measure(test: string): Promise<Answer> {
  const loaded = new Set<number>();
  const touched: Touched[] = [];
  const failed: string[] = [];
  noted = loaded;
  const begun = performance.now();
  const tests = load(test);
  const loadMs = performance.now() - begun;
  for (const [index, { name, run }] of tests.entries()) {
    noted = new Set();
    const from = performance.now();
    try {
      await run();
    } catch (error) {
      failed.push(`${name}: ${error instanceof Error ? error.message.slice(0, 200) : String(error)}`);
    }
    touched.push({ test, index, name, ms: performance.now() - from, ids: [...noted] });
  }
  noted = null;
  return { kind: 'measured', test, loaded: [...loaded], loadMs, touched, failed };
}

async function firstFailing(tests: readonly { test: string; index: number }[]): Promise<string | null> {
  const loaded = new Map<string, CollectedTest[]>();
  for (const { test, index } of tests) {
    try {
      if (!loaded.has(test)) loaded.set(test, load(test));
      const found = loaded.get(test)![index];
      if (!found) return `${test}: not collected`;
      await found.run();
    } catch {
      takeTests();
      return `${test} › ${loaded.get(test)?.[index]?.name ?? 'loading'}`;
    }
  }
  return null;
}
