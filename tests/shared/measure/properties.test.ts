import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { apparentGapAt, clearanceAt, prepareLine } from '@/shared/measure';
import { compareLine, measureLine } from '@/shared/scoring';
import type { Pack } from '@/shared/schemas/pack';
import { registryFace } from '@/tests/fixtures/registry-face';
import { registryPack } from '@/tests/fixtures/registry-pack';
import { drawnPack } from '@/tests/fixtures/drawn-pack';

const at = { size: { value: 72, unit: 'px' }, ground: 'light' } as const;
const TEXT = 'HALTVorncji';
const offset = fc.integer({ min: -150, max: 150 });
const offsets = (pack: Pack) => fc.array(offset, { minLength: pack.builtIn.length, maxLength: pack.builtIn.length });

let packs: Pack[];
beforeAll(async () => {
  const faces = [];
  for (const name of ['lato-400', 'playfair-display-400']) faces.push(await registryFace(name));
  packs = [...faces.map((face) => registryPack(face, TEXT)), drawnPack('HOLAVTonI')];
});

describe('invariants of the measures', () => {
  it('loosening a pair never lowers its apparent gap', () => {
    fc.assert(
      fc.property(fc.nat(2), fc.nat(7), offset, fc.integer({ min: 0, max: 200 }), (which, index, total, more) => {
        const line = prepareLine(packs[which]!);
        expect(apparentGapAt(line, index, total + more)).toBeGreaterThanOrEqual(apparentGapAt(line, index, total));
      }),
    );
  });

  it('mirroring a pair mirrors it: same gap, same clearance', () => {
    fc.assert(
      fc.property(fc.nat(2), fc.nat(7), offset, (which, index, total) => {
        const pack = packs[which]!,
          mirror = mirrored(pack);
        const back = pack.builtIn.length - 1 - index;
        expect(apparentGapAt(prepareLine(mirror), back, total)).toBeCloseTo(
          apparentGapAt(prepareLine(pack), index, total),
          6,
        );
        expect(clearanceAt(prepareLine(mirror), back, total).distance).toBeCloseTo(
          clearanceAt(prepareLine(pack), index, total).distance,
          6,
        );
      }),
    );
  });

  it('scaling a face changes nothing', () => {
    fc.assert(
      fc.property(
        fc.nat(2),
        fc.constantFrom(2, 3, 4),
        fc.array(offset, { minLength: 10, maxLength: 10 }),
        (which, times, all) => {
          const pack = packs[which]!,
            set = { tracking: 0, offsets: all.slice(0, pack.builtIn.length) };
          const one = measureLine(pack, set, at),
            other = measureLine(scaled(pack, times), set, at);
          other.pairs.forEach((pair, index) => {
            const wanted = one.pairs[index]!;
            expect(pair.apparentGap).toBeCloseTo(wanted.apparentGap, 1);
            expect(pair.clearance).toBeCloseTo(wanted.clearance, 1);
            expect(pair.area).toBeCloseTo(wanted.area, 1);
            expect(pair.sides).toEqual(wanted.sides);
            expect(Math.abs((pair.suggestion ?? 0) - (wanted.suggestion ?? 0))).toBeLessThanOrEqual(1);
          });
        },
      ),
      { numRuns: 20 },
    );
  });
});

describe('invariants of comparing', () => {
  const reference = (pack: Pack, set: number[]) => ({
    author: 'A',
    tracking: 0,
    offsets: set,
    tolerances: set.map(() => 8),
    reasons: set.map(() => null),
  });

  it('tightness and the rest give back the deviations', () => {
    const pack = packs[0]!;
    fc.assert(
      fc.property(offsets(pack), offsets(pack), offset, (own, theirs, tracking) => {
        const comparison = compareLine(measureLine(pack, { tracking, offsets: own }, at), [reference(pack, theirs)]);
        comparison.pairs.forEach((pair, index) => {
          expect(pair.rest + comparison.tightness).toBe(pair.deviation);
          expect(pair.deviation).toBe(tracking + own[index]! - theirs[index]!);
        });
      }),
    );
  });

  it('adding tracking changes tightness by as much, and no rest, no verdict, no letter out of place', () => {
    const pack = packs[0]!;
    fc.assert(
      fc.property(offsets(pack), offsets(pack), offset, (own, theirs, tracking) => {
        const before = compareLine(measureLine(pack, { tracking: 0, offsets: own }, at), [reference(pack, theirs)]);
        const after = compareLine(measureLine(pack, { tracking, offsets: own }, at), [reference(pack, theirs)]);
        expect(after.tightness).toBe(before.tightness + tracking);
        expect(after.pairs.map(({ rest, within }) => ({ rest, within }))).toEqual(
          before.pairs.map(({ rest, within }) => ({ rest, within })),
        );
        // A line so tight that contact decides gets no word on whether designers vary at a pair.
        const verdicts = (found: typeof after.findings) =>
          found.filter(({ kind }) => kind !== 'tightness').map((one) => ({ ...one, designersVary: false }));
        expect(verdicts(after.findings)).toEqual(verdicts(before.findings));
      }),
    );
  });

  it('a reference compared with itself finds nothing', () => {
    const pack = packs[0]!;
    fc.assert(
      fc.property(offsets(pack), (set) => {
        const comparison = compareLine(measureLine(pack, { tracking: 0, offsets: set }, at), [reference(pack, set)]);
        expect(comparison.outside).toBe(0);
        expect(comparison.findings.map(({ kind }) => kind)).toEqual(['within']);
      }),
    );
  });
});

describe('bad spacings', () => {
  it('are refused with the value quoted, never measured', () => {
    const pack = packs[0]!;
    fc.assert(
      fc.property(
        fc.oneof(fc.constant(Number.NaN), fc.constant(Infinity), fc.double({ min: 2001, max: 1e9 }), fc.constant(0.25)),
        (wrong) => {
          const set = pack.builtIn.map(() => 0);
          set[3] = wrong;
          expect(() => measureLine(pack, { tracking: 0, offsets: set }, at)).toThrow(`“${wrong}”`);
        },
      ),
    );
    fc.assert(
      fc.property(
        fc.nat(40).filter((count) => count !== pack.builtIn.length),
        (count) => {
          expect(() => measureLine(pack, { tracking: 0, offsets: new Array<number>(count).fill(0) }, at)).toThrow(
            `${count} offsets`,
          );
        },
      ),
    );
  });
});

function mirrored(pack: Pack): Pack {
  const glyphs = pack.glyphs.map((glyph) => ({ ...glyph, path: mapped(glyph.path, (x, y) => [glyph.advance - x, y]) }));
  return {
    ...pack,
    glyphs,
    letters: [...pack.letters].reverse(),
    builtIn: [...pack.builtIn].reverse(),
    wordSpace: [...pack.wordSpace].reverse(),
  };
}

function scaled(pack: Pack, times: number): Pack {
  const vertical = Object.fromEntries(
    Object.entries(pack.vertical).map(([key, value]) => [key, value * times]),
  ) as Pack['vertical'];
  return {
    ...pack,
    vertical,
    unitsPerEm: pack.unitsPerEm * times,
    glyphs: pack.glyphs.map((glyph) => ({
      ...glyph,
      advance: glyph.advance * times,
      path: mapped(glyph.path, (x, y) => [x * times, y * times]),
    })),
    builtIn: pack.builtIn.map((value) => value * times),
    wordSpace: pack.wordSpace.map((value) => value * times),
  };
}

function mapped(path: string, change: (x: number, y: number) => [number, number]): string {
  return path.replace(/(-?\d+) (-?\d+)/g, (_, x: string, y: string) => change(Number(x), Number(y)).join(' '));
}
