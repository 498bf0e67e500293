import { beforeAll, describe, expect, it } from 'vitest';
import { buildPack } from '@/lib/face/build-pack';
import { type FacePairs, facePairsOf } from '@/lib/word-finder/face-pairs';
import { type Search, searchWords } from '@/lib/word-finder/search';
import type { WordList } from '@/lib/word-finder/word-list';
import { apparentGapAt, prepareLine } from '@/shared/measure';

/** Words of our own; the first eight are taken as the common ones. */
const list: WordList = {
  words: ['travel', 'modern', 'clear', 'tower', 'wave', 'Toni', 'corner', 'nave', 'modem', 'vault', 'żaba', 'avocado'],
  ranked: 8,
};
const search: Search = {
  examples: [],
  alike: false,
  kinds: [],
  lettering: null,
  shortest: 2,
  longest: 12,
  names: 'with',
  words: 1,
  order: 'pairs',
  most: 100,
};
const texts = ({ lines }: { lines: { text: string }[] }) => lines.map(({ text }) => text);

let face: FacePairs;
beforeAll(async () => {
  face = await facePairsOf({ kind: 'catalogue', key: 'lato-400' });
});

describe('words that hold what is looked for', () => {
  it.each([['AV'], ['To'], ['rn'], ['av'], ['TO']])('%s, as a plain count finds them', async (pair) => {
    const found = await searchWords(list, face, { ...search, examples: [pair] });
    const set = (word: string) =>
      pair === pair.toUpperCase()
        ? word.toUpperCase()
        : pair === pair.toLowerCase()
          ? word
          : word[0]!.toUpperCase() + word.slice(1);
    const expected = list.words
      .filter((word) => word !== 'żaba')
      .map(set)
      .filter((word) => word.split(pair).length > 1);
    expect(texts(found).sort()).toEqual(expected.sort());
    for (const { text, wanted } of found.lines) expect(wanted).toHaveLength(text.split(pair).length - 1);
    expect(found.lacking).toBe(1);
  });

  it('looks for several in each way of writing that they need, no word twice', async () => {
    const found = texts(await searchWords(list, face, { ...search, examples: ['To', 'rn'] }));
    expect(found.sort()).toEqual(['Corner', 'Modern', 'Toni', 'Tower', 'corner', 'modern'].sort());
  });

  it('puts what has the most of them first, a common word before a rare one', async () => {
    const found = await searchWords(list, face, { ...search, examples: ['av', 've', 'au'] });
    expect(texts(found)).toEqual(['travel', 'wave', 'nave', 'avocado', 'vault'].sort(byHand));
    expect(found.lines.map(({ different }) => different)).toEqual([2, 2, 2, 1, 1]);
  });

  it('keeps to length and names', async () => {
    const all = { ...search, examples: ['To', 'on', 'ow'], lettering: 'written' as const };
    expect(texts(await searchWords(list, face, { ...all, names: 'only' }))).toEqual(['Toni']);
    expect(texts(await searchWords(list, face, { ...all, names: 'without' }))).toEqual(['tower']);
    expect(texts(await searchWords(list, face, { ...all, shortest: 5 }))).toEqual(['tower']);
    expect(texts(await searchWords(list, face, { ...all, longest: 4 }))).toEqual(['Toni']);
  });

  it('finds pairs of the same sides as an example', async () => {
    const found = texts(await searchWords(list, face, { ...search, examples: ['VA'], alike: true }));
    // WA slants as VA does; AV the other way.
    expect(found).toEqual(['WAVE', 'VAULT']);
  });

  it('joins two words, none twice', async () => {
    const found = texts(await searchWords(list, face, { ...search, examples: ['AV'], words: 2 }));
    expect(found).toHaveLength(2);
    expect(new Set(found.join(' ').split(' ')).size).toBe(4);
    for (const line of found) expect(line.split(' ').every((word) => word.includes('AV'))).toBe(true);
  });

  it('makes figures where they are looked for', async () => {
    const found = await searchWords(list, face, { ...search, kinds: ['one-among-figures'], shortest: 4, most: 2_000 });
    expect(texts(found)).toEqual(expect.arrayContaining(['1911', '1715', '2017']));
    expect(texts(found)).not.toContain('2000');
  });
});

it('tells how far gaps spread, as a line of an exercise is measured', async () => {
  const [found] = (await searchWords(list, face, { ...search, examples: ['AV'], order: 'uneven' })).lines;
  const line = prepareLine(await buildPack({ kind: 'catalogue', key: 'lato-400' }, found!.text));
  const gaps = line.pairs.map(({ builtIn }, index) => apparentGapAt(line, index, builtIn));
  const unkerned = line.pairs.map((_, index) => apparentGapAt(line, index, 0));
  const builtIn = line.pairs.map((pair) => pair.builtIn);
  const spread = (values: number[]) => Math.max(...values) - Math.min(...values);
  expect(found!.asSet).toBeCloseTo(spread(gaps), 0);
  expect(found!.unkerned).toBeCloseTo(spread(unkerned), 0);
  expect(found!.builtIn).toBeCloseTo(spread(builtIn), 0);
});

it('flags what small letters may be read as when they close up', async () => {
  const { lines } = await searchWords(list, face, { ...search, examples: ['rn', 'cl'], lettering: 'written' });
  const misread = Object.fromEntries(lines.map((line) => [line.text, line.misread]));
  expect(misread).toEqual({ modern: 'modem', corner: 'rn as m', clear: 'cl as d' });
});

it('draws a text from the letters it has measured', async () => {
  await searchWords(list, face, { ...search, examples: ['av'] });
  const pack = await buildPack({ kind: 'catalogue', key: 'lato-400' }, 'wave nave');
  const drawn = face.draw('wave nave');
  expect(drawn.letters.map((letter) => drawn.glyphs[letter]!.cluster).join('')).toBe('wavenave');
  expect(drawn.letters.map((letter) => drawn.glyphs[letter]!.advance)).toEqual(
    pack.letters.map((letter) => pack.glyphs[letter]!.advance),
  );
  expect(drawn.builtIn).toEqual(pack.builtIn);
});

/** By hand: travel and wave are common and hold two; nave too; avocado and vault are not common and hold one. */
function byHand(a: string, b: string): number {
  const order = ['travel', 'wave', 'nave', 'vault', 'avocado'];
  return order.indexOf(a) - order.indexOf(b);
}
