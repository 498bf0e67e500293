import { beforeAll, describe, expect, it } from 'vitest';
import { seenGap, totalForNearGap } from '@/shared/measure/near-gap';
import { letterShape, type LetterShape } from '@/shared/measure/letter-shape';
import { prepareFace, type PreparedFace } from '@/shared/measure/prepared-face';
import { heightsUpTo } from '@/shared/outline/edge-profile';
import { registryFace } from '@/tests/fixtures/registry-face';
import { registryPack } from '@/tests/fixtures/registry-pack';

/** Every expectation here is common practice in setting display type, without a source: signs and orders only. */
describe.each(['lato-400', 'montserrat-700', 'source-serif-4-400', 'abril-fatface-400'])(
  'display practice in %s',
  (name) => {
    const TEXT = 'HOIVALTYo';
    let face: PreparedFace, shapes: Map<string, LetterShape>;
    beforeAll(async () => {
      const pack = registryPack(await registryFace(name), TEXT);
      face = prepareFace(pack);
      shapes = new Map(pack.glyphs.map((glyph, index) => [glyph.cluster, face.shapeOf(index)]));
    });
    const wanted = (pair: string) =>
      totalForNearGap(seenGap(shapes.get(pair[0]!)!, shapes.get(pair[1]!)!), face.reference!)!;
    /**
     * The room from the rightmost ink of one to the leftmost ink of the other (of H, from its stem), once the pair is
     * as open as the face's reference.
     */
    const room = (pair: string) => {
      const left = shapes.get(pair[0]!)!,
        right = shapes.get(pair[1]!)!;
      const serifs =
        [...pair].filter((letter) => letter === 'H').length * ((face.stem!.stemToStem - face.stem!.stemGap) / 2);
      return left.advance - left.box.right + wanted(pair) + right.box.left + serifs;
    };

    it('asks for most room between straight sides, less between round and straight, less again between rounds', () => {
      expect(room('HO')).toBeLessThan(room('HH'));
      expect(room('OO')).toBeLessThan(room('HO'));
    });
    it('asks for least where slants and open sides face into each other', () => {
      for (const pair of ['AV', 'VA', 'LT', 'LY', 'LV']) expect(room(pair), pair).toBeLessThan(room('OO'));
      for (const pair of ['AV', 'VA', 'LT', 'LY', 'To']) expect(wanted(pair), pair).toBeLessThan(-20);
    });
    it('does not tighten AA as it does AV, since its slants face away', () => {
      expect(wanted('AA')).toBeGreaterThan(wanted('AV') + 60);
      expect(wanted('AA')).toBeGreaterThan(-25);
    });
    it('opens a gap that is too narrow', () => {
      const H = shapes.get('H')!;
      const narrow = { ...H, seen: { ...H.seen, right: H.seen.right.map((white) => white - 60) } };
      expect(totalForNearGap(seenGap(narrow, H), face.reference!)!).toBeGreaterThan(0);
    });
  },
);

describe('serifs', () => {
  const stem = 'M60 0L160 0L160 700L60 700Z';
  const serifed = 'M10 0L210 0L210 30L160 30L160 670L210 670L210 700L10 700L10 670L60 670L60 30L10 30Z';
  const shape = (path: string) =>
    letterShape({ cluster: 'I', path, advance: 220 }, { unitsPerEm: 1000, heights: heightsUpTo(740) });
  it('that face each other ask for more room from stem to stem than the same stems without', () => {
    const total = (one: LetterShape) => totalForNearGap(seenGap(one, one), 150)!;
    // Both stems are 60 inside their advance, so the total gives the room from stem to stem.
    expect(total(shape(serifed))).toBeGreaterThan(total(shape(stem)));
  });
});
