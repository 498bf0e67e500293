import { describe, expect, it } from 'vitest';
import { prepareLine } from '@/shared/measure';
import { registryFace } from '@/tests/fixtures/registry-face';
import { registryPack } from '@/tests/fixtures/registry-pack';

/** Common practice: how the trade sorts sides. `left` and `right` are sides of the letter. */
const EXPECTED = {
  left: { straight: 'HBDEFKLMPRhkl', round: 'OCGQcdeoq', 'slanted-in': 'A', 'slanted-out': 'Vvy', open: 'TXx' },
  right: { straight: 'HMj', round: 'ODPBbop', 'slanted-in': 'A', 'slanted-out': 'vy', open: 'CKLTXckrx', arched: 'Ue' },
} as const;

describe.each(['lato-400', 'montserrat-700', 'roboto-slab-400'])('kinds of side in %s, from outlines alone', (name) => {
  it.each(['left', 'right'] as const)('%s sides', async (side) => {
    const line = prepareLine(
      registryPack(await registryFace(name), 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz'),
    );
    const kindOf = (letter: string) => line.letters[line.clusters.indexOf(letter)]!.sides[side];
    for (const [kind, letters] of Object.entries(EXPECTED[side]))
      for (const letter of letters) expect(`${letter} ${kindOf(letter)}`).toBe(`${letter} ${kind}`);
  });
});

it('holds for letters outside the Latin alphabet and for figures', async () => {
  const line = prepareLine(registryPack(await registryFace('lato-400'), 'Ø0ÅÉ'));
  expect(line.letters.map(({ sides }) => [sides.left, sides.right])).toEqual([
    ['round', 'round'],
    ['round', 'round'],
    ['slanted-in', 'slanted-in'],
    ['straight', 'open'],
  ]);
});
