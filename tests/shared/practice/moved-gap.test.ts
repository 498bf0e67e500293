import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureLine } from '@/shared/scoring';
import { drawQuestion, leastMove, type Question } from '@/shared/practice/moved-gap';
import { numbersFrom } from '@/shared/practice/numbers-from';
import { packSchema } from '@/shared/schemas/pack';
import type { PracticeKind } from '@/shared/schemas/practice';

const readPack = (name: string) => packSchema.parse(JSON.parse(readFileSync(`tests/fixtures/packs/${name}`, 'utf8')));
const packs = [readPack('market-avenue.json'), readPack('volta-yawl.json')];
const KINDS: PracticeKind[] = ['any', 'straight', 'round', 'open'];

const seeds = fc.integer({ min: 0, max: 2 ** 32 - 1 });
const levels = fc.double({ min: 1, max: 220, noNaN: true });
const kinds = fc.constantFrom(...KINDS);

const measured = ({ pack }: Question, spacing: Question['moved']) =>
  measureLine(pack, spacing, { size: { value: 72, unit: 'px' }, ground: 'light' });
const draws = (kind: PracticeKind, level: number, count: number) => {
  const random = numbersFrom(count + level);
  return Array.from({ length: count }, () => drawQuestion(packs, kind, level, random)!);
};

describe('a look of the practice', () => {
  it('is the same for the same seed', () => {
    fc.assert(
      fc.property(seeds, levels, kinds, (seed, level, kind) => {
        const first = drawQuestion(packs, kind, level, numbersFrom(seed));
        expect(first).not.toBeNull();
        expect(drawQuestion(packs, kind, level, numbersFrom(seed))).toEqual(first);
      }),
    );
  });

  it('shows the line as the face comes, and with one gap moved by what is told, or nothing moved', () => {
    fc.assert(
      fc.property(seeds, levels, kinds, (seed, level, kind) => {
        const look = drawQuestion(packs, kind, level, numbersFrom(seed))!;
        expect(look.unmoved).toEqual({ tracking: 0, offsets: look.pack.builtIn.map(() => 0) });
        const differing = look.moved.offsets.flatMap((offset, gap) => (offset === 0 ? [] : [[gap, offset]]));
        expect(look.moved.tracking).toBe(0);
        expect(differing).toEqual(look.gap === null ? [] : [[look.gap, look.by]]);
        if (look.gap === null) expect(look.by).toBe(0);
        else expect(Math.abs(look.by)).toBe(Math.max(Math.round(level), leastMove(packs, kind)!));
      }),
    );
  });

  it('moves a gap out of its usual range, away from it, and never one that its designers set outside', () => {
    fc.assert(
      fc.property(seeds, levels, kinds, (seed, level, kind) => {
        const look = drawQuestion(packs, kind, level, numbersFrom(seed))!;
        if (look.gap === null) return;
        const before = measured(look, look.unmoved);
        const pair = before.pairs[look.gap]!;
        expect(pair.outside).toBe(false);
        const apart = pair.total - before.line.tightness + look.by;
        if (look.by > 0) expect(apart).toBeGreaterThan(pair.usual!.high);
        else expect(apart).toBeLessThan(pair.usual!.low);
      }),
    );
  });

  it('never makes letters cross', () => {
    fc.assert(
      fc.property(seeds, levels, kinds, (seed, level, kind) => {
        const look = drawQuestion(packs, kind, level, numbersFrom(seed))!;
        if (look.gap !== null) expect(measured(look, look.moved).pairs[look.gap]!.contact).not.toBe('crossing');
      }),
    );
  });

  it('moves nothing in about one look of six, at every size of move', () => {
    for (const level of [5, 40, 200]) {
      const share = draws('any', level, 3000).filter(({ gap }) => gap === null).length / 3000;
      // 3,000 draws of 1/6 stray by .007.
      expect(Math.abs(share - 1 / 6)).toBeLessThan(0.03);
    }
  });

  it('opens and closes, above and below, in every line', () => {
    const looks = draws('any', 30, 500).filter(({ gap }) => gap !== null);
    expect(new Set(looks.map(({ by }) => Math.sign(by)))).toEqual(new Set([-1, 1]));
    expect(new Set(looks.map(({ movedAbove }) => movedAbove))).toEqual(new Set([true, false]));
    expect(new Set(looks.map(({ pack }) => pack))).toEqual(new Set(packs));
  });

  it('takes gaps by their sides: lines that read Marketplace Avenue Wyandot and Volta Yawl', () => {
    const names = (kind: PracticeKind) =>
      new Set(
        draws(kind, 120, 500).flatMap(({ pack, gap }) => {
          const letter = (at: number) => pack.glyphs[pack.letters[at]!]!.cluster;
          return gap === null ? [] : [letter(gap) + letter(gap + 1)];
        }),
      );
    // Common practice: A, v and W slant, r is open on the right; d and o are round towards each other's neighbours.
    expect([...names('open')]).toEqual(expect.arrayContaining(['Av', 'rk', 'Wy']));
    expect(names('round')).toContain('do');
    expect(names('straight')).not.toContain('do');
    // A word space is no gap between letters.
    expect(names('any')).not.toContain('eA');
  });

  it('has always a few gaps to choose from at its least move', () => {
    for (const kind of KINDS) {
      const looks = draws(kind, 0, 400).filter(({ gap }) => gap !== null);
      expect(new Set(looks.map(({ pack, gap }) => `${pack.text} ${gap}`)).size).toBeGreaterThanOrEqual(3);
    }
  });

  it('is not to be had without lines', () => {
    expect(drawQuestion([], 'any', 30, numbersFrom(1))).toBeNull();
    expect(leastMove([], 'any')).toBeNull();
  });
});
