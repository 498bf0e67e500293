import { beforeAll, describe, expect, test } from 'vitest';
import { buildPairs } from '@/lib/face/build-pack';
import { prepareFace } from '@/shared/measure/prepared-face';
import { readOwnKerning, sharesByOwnKerning, type KernedPair } from '@/shared/usual-range/own-kerning';
import { faceOf, sharesOfPair, type UsualFace } from '@/shared/usual-range/usual-range';
import type { LetterShape } from '@/shared/measure/letter-shape';

const LEFTS = [...'ALPTVYFKO'],
  RIGHTS = [...'AOTVYJaeouy'];
let face: UsualFace;
let shape: (letter: string) => LetterShape;

beforeAll(async () => {
  const table = await buildPairs(
    { kind: 'catalogue', key: 'lato-400' },
    [...LEFTS, ...RIGHTS].map((a) => a + a),
  );
  const prepared = prepareFace(table);
  face = faceOf(table, prepared)!;
  shape = (letter) => prepared.shapeOf(table.glyphs.findIndex(({ cluster }) => cluster === letter));
});

/** A designer who gives every pair this share of what is usual. */
function designer(share: number): KernedPair[] {
  return LEFTS.flatMap((left) =>
    RIGHTS.map((right) => {
      const pair = { left: shape(left), right: shape(right) };
      return { ...pair, kern: share * sharesOfPair(face, pair.left, pair.right).mean * face.features.unit };
    }),
  );
}

describe('a face’s own hand', () => {
  test('that does a third more than is usual moves what is expected of its other pairs by as much', () => {
    const hand = readOwnKerning(face, designer(4 / 3))!;
    expect(hand.scale).toBeCloseTo(4 / 3, 6);
    const plain = sharesOfPair(face, shape('T'), shape('o')),
      own = sharesByOwnKerning(face, hand, shape('T'), shape('o'));
    expect(own.mean).toBeCloseTo((plain.mean * 4) / 3, 6);
  });

  test('that kerns little does not shrink what is usual', () => {
    const few = designer(0.7).map((pair, index) => (index % 3 === 0 ? pair : { ...pair, kern: 0 }));
    const hand = readOwnKerning(face, few);
    if (hand !== null) expect(hand.scale).toBeGreaterThanOrEqual(1);
  });

  test('that kerns nothing leaves the range as the shapes tell it', () => {
    const hand = readOwnKerning(face, designer(0))!;
    expect(sharesByOwnKerning(face, hand, shape('A'), shape('V'))).toEqual(sharesOfPair(face, shape('A'), shape('V')));
  });

  test('against which the range fails in more than half of the asked pairs silences it', () => {
    const contrary = designer(1).map((pair) => ({ ...pair, kern: 200 }));
    expect(readOwnKerning(face, contrary)).toBeNull();
  });

  test('does not ask the pair itself: its own kerning changes nothing', () => {
    const base = designer(1);
    const changed = base.map((pair) =>
      pair.left === shape('T') && pair.right === shape('o') ? { ...pair, kern: pair.kern - 30 } : pair,
    );
    const [one, two] = [readOwnKerning(face, base)!, readOwnKerning(face, changed)!];
    const to = (hand: typeof one) => sharesByOwnKerning(face, { ...hand, scale: 1 }, shape('T'), shape('o')).mean;
    expect(Math.abs(to(one) - to(two))).toBeLessThan(0.01);
  });
});
