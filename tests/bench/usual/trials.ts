import { readFileSync } from 'node:fs';
import { composePack } from '@/lib/face/compose-pack';
import { readFace } from '@/lib/face/read-face';
import { measureLine } from '@/shared/scoring';
import type { LineMeasure } from '@/shared/schemas/measure';
import type { Pack } from '@/shared/schemas/pack';
import { spokenOutside } from '@/shared/usual-range/spoken';
import { seededRandom } from '../agreement/random';
import type { FaceFile } from '../fit/face-files';
import { LINES, type Cell } from './words';

export const CELLS = Object.keys(LINES) as Cell[];
/** A face takes every second line, one with an odd place the others. */
const EVERY = 2;
const AT = { size: { value: 72, unit: 'px' as const }, ground: 'light' as const };

/** What became of one moved gap. */
export type Trial = { found: boolean; outside: boolean; spoken: boolean; wrongWay: boolean };
/** The findings of a line as its designer set it. */
export type Untouched = { gaps: number; outside: number; spoken: number };

export type FaceTrials = { face: FaceFile; moved: Map<string, Trial[]>; untouched: Map<Cell, Untouched[]> };

/** From shapes alone, or from a pack made with the face available. */
export type Told = 'shapes' | 'own kerning';

/** Amounts by which one gap is moved, 1/1000 em; a sign is drawn where `either` is set. */
export const EITHER = [20, 30, 45];
export const SIGNED = [-60, -45, -30, 60, 90, 120];

/** Sets every line as the face's designer kerned it, moves one gap of it, and looks where the measure points first. */
export async function faceTrials(face: FaceFile, every: number, told: Told): Promise<FaceTrials> {
  const opened = await readFace(readFileSync(face.path));
  const moved = new Map<string, Trial[]>(),
    untouched = new Map<Cell, Untouched[]>();
  const random = seededRandom(
    [...face.path.split('/').at(-1)!].reduce((sum, letter) => sum * 31 + letter.charCodeAt(0), 7),
  );
  const add = (key: string, trial: Trial) => moved.set(key, [...(moved.get(key) ?? []), trial]);
  for (const cell of CELLS)
    for (const text of LINES[cell].filter((_, index) => index % EVERY === every % EVERY)) {
      const { usual, ...plain } = composePack(opened, text);
      const pack: Pack = told === 'shapes' || usual === undefined ? plain : { ...plain, usual };
      const still = measure(pack, -1, 0);
      const letters = still.pairs.filter((pair) => pair.usual !== null);
      if (letters.length === 0) continue;
      untouched.set(cell, [
        ...(untouched.get(cell) ?? []),
        {
          gaps: letters.length,
          outside: letters.filter(({ outside }) => outside).length,
          spoken: letters.filter((pair) => spokenOutside(pair, still.line) !== null).length,
        },
      ]);
      const { index } = letters[Math.floor(random() * letters.length)]!;
      const sign = random() < 0.5 ? -1 : 1;
      for (const amount of EITHER) add(`${cell} ${amount}`, tried(measure(pack, index, sign * amount), index, sign));
      for (const amount of SIGNED) add(`${cell} ${amount}`, tried(measure(pack, index, amount), index, amount));
    }
  return { face, moved, untouched };
}

function measure(pack: Pack, index: number, amount: number): LineMeasure {
  return measureLine(pack, { tracking: 0, offsets: pack.builtIn.map((_, i) => (i === index ? amount : 0)) }, AT);
}

function tried({ pairs, line }: LineMeasure, index: number, way: number): Trial {
  let first = -1;
  for (const pair of pairs)
    if (pair.surprise !== null && (first < 0 || Math.abs(pair.surprise) > Math.abs(pairs[first]!.surprise!)))
      first = pair.index;
  const pair = pairs[index]!;
  const right = pair.surprise !== null && pair.surprise * way > 0;
  return {
    found: first === index && right,
    outside: pair.outside === true && right,
    spoken: right && spokenOutside(pair, line) !== null,
    wrongWay: pair.outside === true && !right,
  };
}
