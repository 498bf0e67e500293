import { get } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';
import type { Filled } from './fill';
import { ask } from './load';
import { classPages } from './pages';
import type { BenchServer } from './server';

/** How long one request took, and how long it kept the process from answering anybody else, ms. */
export type Block = { name: string; took: number; kept: number };

/** Nobody should have to wait longer for another's request than this, ms. */
const WANTED = 100;

/**
 * Asks for every page of a class, and for what pages ask after, first when nothing is worked out and then again, and asks
 * meanwhile, one time after another, whether the process answers at all (/healthz, before the framework). Each page was
 * asked for once in a class of one before, so that its code is loaded.
 */
export async function blocksOf({ origin }: BenchServer, filled: Filled, instructorOfFew: Filled): Promise<Block[]> {
  const asked = [
    ...classPages,
    { name: 'map, one line', path: ({ exerciseId }: Filled) => mapOf(exerciseId) },
    { name: 'map, all lines', path: ({ exerciseId }: Filled) => `${mapOf(exerciseId)}&line=` },
    { name: 'class table', path: ({ exerciseId }: Filled) => `/api/exports/class/${exerciseId}?round=3` },
    { name: 'map table', path: ({ exerciseId }: Filled) => `/api/exports/map/${exerciseId}?round=3` },
    { name: 'marks', path: ({ exerciseId }: Filled) => `/api/exports/marks/${exerciseId}?round=3` },
    { name: 'notes', path: ({ exerciseId }: Filled) => `/api/exports/notes/${exerciseId}?round=3` },
  ];
  for (const { path } of asked)
    await ask(origin, undefined, { path: path(instructorOfFew, 0), cookie: instructorOfFew.instructorCookie }).catch(
      () => 0,
    );
  const blocks: Block[] = [];
  for (const time of ['first', 'again'])
    for (const { name, path } of asked) {
      const watch = watchProcess(origin);
      const begun = performance.now();
      const failed = await ask(origin, undefined, { path: path(filled, 1), cookie: filled.instructorCookie }).then(
        () => '',
        (error: Error) => ` (${error.message.slice(0, 60)})`,
      );
      const took = performance.now() - begun;
      blocks.push({ name: `${name}, ${time}${failed}`, took, kept: await watch() });
    }
  return blocks;
}

const mapOf = (exerciseId: string) => `/api/class/map/${exerciseId}?round=3`;

/** Asks without a pause until it is called; then it gives the longest wait for an answer, ms. */
function watchProcess(origin: string): () => Promise<number> {
  let over = false;
  let longest = 0;
  const watching = (async () => {
    while (!over) {
      const begun = performance.now();
      await new Promise<void>((resolve, reject) => {
        get(`${origin}/healthz`, (answer) => void answer.resume().on('end', resolve)).on('error', reject);
      });
      longest = Math.max(longest, performance.now() - begun);
      await wait(2);
    }
  })();
  return async () => {
    over = true;
    await watching;
    return longest;
  };
}

export function printBlocks(students: number, blocks: readonly Block[]): void {
  const longest = Math.max(...blocks.map(({ kept }) => kept));
  console.log(
    `  others wait for one request of ${students} students at most ${longest.toFixed(0)} ms (wanted: ${WANTED} or less: ${longest <= WANTED ? 'reached' : 'MISSED'}); the longest:`,
  );
  for (const { name, took, kept } of blocks.toSorted((one, other) => other.kept - one.kept).slice(0, 16))
    console.log(`    ${name.padEnd(34)} others waited ${kept.toFixed(0).padStart(5)} ms of ${took.toFixed(0)} ms`);
}
