import { expect, it } from 'vitest';
import { proposeLevel } from '@/shared/marking/propose-level';
import type { StoredMeasure } from '@/shared/schemas/stored-figures';
import { measureLine, reportLine } from '@/shared/scoring';
import { registryFace } from '@/tests/fixtures/registry-face';
import { registryPack } from '@/tests/fixtures/registry-pack';

const FACES = [
  'abril-fatface-400',
  'alegreya-400',
  'bitter-400',
  'crimson-pro-400',
  'eb-garamond-400',
  'fira-sans-400',
  'inter-400',
  'lato-400',
  'libre-baskerville-400',
  'montserrat-400',
  'playfair-display-400',
  'work-sans-400',
];

const WORDS = (
  'LAVATORY TAVERNS HARBOUR PLANKTON MALLARD OTTOMAN COOLROOM RAMPART LANTERN KITCHEN ' +
  'VOYAGER QUARTZY FACTORY WAYWARD TRAVELS HOLIDAY PAYMENT LIBRARY CAVALRY AVOCADO ' +
  'Harvest Tovarish Wayfarer Yolkless Pavement Avignon Lantern Rivetry Fathoms Torrent ' +
  'Valleys Tapestry Kingdom Vanilla Yawning Pottery Waterway Tobacco Lottery Provost ' +
  'rivetry knavery minnows harvest cloudlet turnery pavement fountain yawning waterway ' +
  'tapestry voyager kitchen quartet wayward crystal lantern avocado tollway savvyest'
).split(' ');

/** Offsets at which every gap is as open as the middle of its line: a setting that a measure made, not a person. */
function evened(pack: Parameters<typeof measureLine>[0]): number[] {
  const flat = pack.builtIn.map(() => 0);
  const { pairs } = measureLine(pack, { tracking: 0, offsets: flat }, AT);
  return pairs.map(({ suggestion }) => suggestion ?? 0);
}

const AT = { size: { value: 72, unit: 'px' }, ground: 'light' } as const;

it('ranks a setting made even by the measure above the designer’s own in at most 2 of 100, by at most one level', async () => {
  expect(WORDS).toHaveLength(60);
  let above = 0,
    compared = 0,
    most = 0;
  for (const name of FACES) {
    const face = await registryFace(name);
    for (const word of WORDS) {
      const pack = registryPack(face, word);
      const levelOf = (offsets: number[]) =>
        proposeLevel(
          'evenness',
          [{ measure: reportLine(pack, { tracking: 0, offsets }, AT) as unknown as StoredMeasure, comparison: null }],
          4,
        )?.level ?? null;
      const own = levelOf(pack.builtIn.map(() => 0)),
        even = levelOf(evened(pack));
      if (own === null || even === null) continue;
      compared += 1;
      if (even > own) above += 1;
      most = Math.max(most, even - own);
    }
  }
  console.log(`evened above the designer's own: ${above} of ${compared}, by ${most} at most`);
  expect(compared).toBeGreaterThan(500);
  expect(above / compared).toBeLessThanOrEqual(0.02);
  expect(most).toBeLessThanOrEqual(1);
}, 120_000);
