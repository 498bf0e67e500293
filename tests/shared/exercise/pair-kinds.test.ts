import { describe, expect, it } from 'vitest';
import { prepareFace } from '@/shared/measure/prepared-face';
import { pairKindsOf } from '@/shared/exercise/pair-kinds';
import type { PairKind } from '@/shared/schemas/word-search';
import { registryFace } from '@/tests/fixtures/registry-face';
import { registryPack } from '@/tests/fixtures/registry-pack';

/** The kinds of a pair in a face of the registry. */
async function kindsIn(key: string): Promise<(pair: string) => PairKind[]> {
  const face = await registryFace(key);
  return (pair) => {
    const pack = registryPack(face, pair);
    const { shapeOf, stem } = prepareFace(pack);
    const [left, right] = pack.letters.map(shapeOf);
    return pairKindsOf(left!, right!, [pair[0]!, pair[1]!], stem);
  };
}

describe('kinds of pairs, by common practice', () => {
  const expected: [PairKind, string[], string[]][] = [
    ['round-round', ['oo', 'oc', 'OC', 'be'], ['HO', 'AV', 'nn']],
    ['straight-round', ['HO', 'OH', 'Io'], ['OO', 'HH', 'AV']],
    ['straight-straight', ['HH', 'HI', 'IN'], ['HO', 'oo', 'AV']],
    ['diagonals', ['AV', 'VA', 'AW', 'WA'], ['AA', 'VV', 'HO']],
    ['open-side', ['LT', 'To', 'ra', 'TA'], ['HO', 'HH', 'oo']],
    ['accent-under-arm', ['Tö', 'Vé', 'Wä', 'Yà', 'Fê'], ['To', 'Lö', 'Hö', 'öT', 'Tç']],
    ['one-among-figures', ['11', '19', '71'], ['97', 'A1', '1A']],
    ['serifs', [], ['HH', 'AV', 'oo', 'nn']],
  ];
  it.each(expected)('%s in a sans', async (kind, those, others) => {
    const kindsOf = await kindsIn('lato-400');
    for (const pair of those) expect([pair, kindsOf(pair)]).toEqual([pair, expect.arrayContaining([kind])]);
    for (const pair of others) expect([pair, kindsOf(pair).includes(kind)]).toEqual([pair, false]);
  });

  it('tells serifs that face each other in a serif and a slab', async () => {
    for (const key of ['libre-baskerville-400', 'roboto-slab-400']) {
      const kindsOf = await kindsIn(key);
      for (const pair of ['HH', 'HI', 'nn', 'mi'])
        expect([key, pair, kindsOf(pair)]).toContainEqual(expect.arrayContaining(['serifs']));
      for (const pair of ['Ho', 'oo', 'OH', 'VA', 'TO'])
        expect([key, pair, kindsOf(pair).includes('serifs')]).toEqual([key, pair, false]);
    }
  });
});
