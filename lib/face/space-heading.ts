import { ownSpacing } from '@/shared/scoring/own-spacing';
import { buildPack } from './build-pack';

/** The face and cut that headings are set in; the same as --text in tokens.css at its largest size. */
const HEADING_FACE = { kind: 'catalogue', key: 'source-serif-4-opsz' } as const;
const HEADING_PIXELS = 48;
const STEP = 5;

/** A letter and the spacing after it, built-in and offset together, in 1/1000 em. */
export type SpacedLetter = { cluster: string; after: number };

/** Our own headings are few; a bound keeps made-up ones from filling the memory. */
const cache = new Map<string, Promise<SpacedLetter[][]>>();
const MOST_CACHED = 200;

/** A heading word by word, letter by letter, spaced by the measure in steps of 5/1000 em. */
export function spaceHeading(text: string): Promise<SpacedLetter[][]> {
  const known = cache.get(text);
  if (known) return known;
  const made = makeHeading(text);
  if (cache.size >= MOST_CACHED) cache.clear();
  cache.set(text, made);
  // A face that could not be read this time may be readable the next.
  made.catch(() => cache.delete(text));
  return made;
}

async function makeHeading(text: string): Promise<SpacedLetter[][]> {
  const pack = await buildPack({ ...HEADING_FACE, axes: { opsz: HEADING_PIXELS, wght: 400 } }, text);
  const { offsets } = ownSpacing(pack, HEADING_PIXELS);
  const words: SpacedLetter[][] = [[]];
  pack.letters.forEach((glyph, index) => {
    const total = ((pack.builtIn[index] ?? 0) * 1000) / pack.unitsPerEm + (offsets[index] ?? 0);
    words.at(-1)!.push({
      cluster: pack.glyphs[glyph]!.cluster,
      after: Math.max(-120, Math.min(60, Math.round(total / STEP) * STEP)),
    });
    if ((pack.wordSpace[index] ?? 0) > 0) words.push([]);
  });
  return words;
}
