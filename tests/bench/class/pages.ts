import type { Filled } from './fill';
import { ask, type Ask } from './load';
import type { BenchServer } from './server';

/** What one page costs beside the trivial page of the same run; `shows` says what is on it. */
export type PageCost = { name: string; shows: string; processorMs: number; times: number; kilobytes: number };

type PageAsked = { name: string; shows: string; path: (filled: Filled, turn: number) => string };

const critique = ({ exerciseId }: Filled) => `/exercises/${exerciseId}/rounds/3/critique`;

/**
 * Every page whose rows, counts or neighbours depend on the class. The requests move on through students, so that no
 * one row is always the one requested.
 */
export const classPages: readonly PageAsked[] = [
  { name: 'course', shows: 'its exercises', path: ({ courseId }) => `/courses/${courseId}` },
  { name: 'people', shows: '50 students', path: ({ courseId }) => `/courses/${courseId}/people` },
  {
    name: 'people, last page',
    shows: 'the last ones',
    path: ({ courseId }) => `/courses/${courseId}/people?page=100000`,
  },
  {
    name: 'people, found',
    shows: 'at most 50',
    path: ({ courseId }) => `/courses/${courseId}/people?find=${encodeURIComponent('student 1')}`,
  },
  { name: 'settings and log', shows: '50 acts', path: ({ courseId }) => `/courses/${courseId}/settings` },
  { name: 'class of the course', shows: '3 rounds', path: ({ courseId }) => `/courses/${courseId}/class` },
  { name: 'exercise', shows: '12 lines, 3 rounds', path: ({ exerciseId }) => `/exercises/${exerciseId}` },
  { name: 'plan', shows: '12 lines, 3 rounds', path: ({ exerciseId }) => `/exercises/${exerciseId}/plan` },
  { name: 'references', shows: '12 lines', path: ({ exerciseId }) => `/exercises/${exerciseId}/references` },
  { name: 'class', shows: '20 students, 12 lines', path: ({ exerciseId }) => `/exercises/${exerciseId}/class` },
  {
    name: 'class, last page',
    shows: 'the last ones',
    path: ({ exerciseId }) => `/exercises/${exerciseId}/class?page=100000`,
  },
  { name: 'queue', shows: '50 proofs', path: critique },
  { name: 'queue, last page', shows: 'the last ones', path: (filled) => `${critique(filled)}?page=100000` },
  {
    name: 'desk',
    shows: '1 line of 1 proof',
    path: ({ proofIds, specimenIds }, turn) =>
      `/critique/${proofIds[(turn * 7) % proofIds.length]}/${specimenIds[turn % specimenIds.length]}`,
  },
  {
    name: 'one line of all',
    shows: '24 settings',
    path: ({ exerciseId, specimenIds }) => `/exercises/${exerciseId}/rounds/3/specimens/${specimenIds[0]}`,
  },
  { name: 'progress', shows: '3 rounds, 12 lines', path: ({ exerciseId }) => `/exercises/${exerciseId}/progress` },
  { name: 'around the map', shows: '12 lines', path: ({ exerciseId }) => `/exercises/${exerciseId}/map` },
  { name: 'second markers', shows: 'at most 50', path: ({ exerciseId }) => `/exercises/${exerciseId}/rounds/3/second` },
  { name: 'setting up a wall', shows: '12 lines', path: ({ exerciseId }) => `/exercises/${exerciseId}/rounds/3/wall` },
  {
    name: 'release plan',
    shows: '100 students',
    path: ({ exerciseId }) => `/exercises/${exerciseId}/rounds/3/release`,
  },
];

/**
 * Asks every page `answers` times in all, in turns with the trivial page, one after another, and holds the processor
 * time of the server against that of the trivial page in the same run.
 * @throws Error at an answer that is not 200.
 */
export async function pageCosts(
  { origin, processorMs }: BenchServer,
  filled: Filled,
  answers: number,
): Promise<{ trivialMs: number; pages: PageCost[] }> {
  const ofInstructor = (path: string): Ask => ({ path, cookie: filled.instructorCookie });
  const sums = new Map<string, { ms: number; bytes: number; answers: number }>();
  const rounds = 5;
  async function some(name: string, path: (turn: number) => string, first: number, count: number) {
    const sum = sums.get(name) ?? { ms: 0, bytes: 0, answers: 0 };
    const begun = processorMs();
    for (let turn = first; turn < first + count; turn += 1)
      sum.bytes += await ask(origin, undefined, ofInstructor(path(turn)));
    sums.set(name, { ms: sum.ms + processorMs() - begun, bytes: sum.bytes, answers: sum.answers + count });
  }
  // Warm, and everything that is worked out once for a state of the class is worked out.
  for (const { path } of classPages)
    for (let turn = 0; turn < 8; turn += 1) await ask(origin, undefined, ofInstructor(path(filled, turn)));
  for (let turn = 0; turn < 40; turn += 1) await ask(origin, undefined, ofInstructor('/baseline'));
  const each = Math.ceil(answers / rounds);
  for (let round = 0; round < rounds; round += 1) {
    await some('trivial', () => '/baseline', 0, each);
    for (const { name, path } of classPages) await some(name, (turn) => path(filled, turn), round * each, each);
    await some('trivial', () => '/baseline', 0, each);
  }
  const msOf = (name: string) => sums.get(name)!.ms / sums.get(name)!.answers;
  return {
    trivialMs: msOf('trivial'),
    pages: classPages.map(({ name, shows }) => ({
      name,
      shows,
      processorMs: msOf(name),
      times: msOf(name) / msOf('trivial'),
      kilobytes: sums.get(name)!.bytes / sums.get(name)!.answers / 1000,
    })),
  };
}

/**
 * One table of all sizes: a page a line, how many times the trivial page it costs at each size, and by how much that
 * grows.
 */
export function printCosts(
  sizes: readonly { students: number; trivialMs: number; pages: readonly PageCost[] }[],
): void {
  const cell = (text: string, width = 12) => text.padStart(width);
  console.log(
    `\n  Times the processor time of the trivial page (${sizes.map(({ students, trivialMs }) => `${students} students: ${trivialMs.toFixed(1)} ms`).join(', ')})`,
  );
  console.log(
    `  ${'page'.padEnd(22)}${'shows'.padEnd(24)}${sizes.map(({ students }) => cell(String(students))).join('')}${cell('grows by')}${cell('kB')}`,
  );
  for (const [place, { name, shows }] of (sizes[0]?.pages ?? []).entries()) {
    const here = sizes.map(({ pages }) => pages[place]!);
    const [first, last] = [here[0]!, here.at(-1)!];
    const growth = `${last.times >= first.times ? '+' : '−'}${Math.abs(100 * (last.times / first.times - 1)).toFixed(0)} %`;
    console.log(
      `  ${name.padEnd(22)}${shows.padEnd(24)}${here.map(({ times }) => cell(times.toFixed(2))).join('')}${cell(growth)}${cell(here.map(({ kilobytes }) => kilobytes.toFixed(0)).join('/'), 14)}`,
    );
  }
}
