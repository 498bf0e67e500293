import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { measureLine } from '@/shared/scoring';
import { evenOffsets, gapsOfKind } from '@/shared/practice/even-line';
import { packSchema } from '@/shared/schemas/pack';

const pack = packSchema.parse(JSON.parse(readFileSync('tests/fixtures/packs/market-avenue.json', 'utf8')));

describe('a line made even for practice', () => {
  it('is evener by the measure than the face sets it, and within a few thousandths even', () => {
    const at = { size: { value: 48, unit: 'px' as const }, ground: 'light' as const };
    const before = measureLine(pack, { tracking: 0, offsets: pack.builtIn.map(() => 0) }, at);
    const after = measureLine(pack, { tracking: 0, offsets: evenOffsets(pack) }, at);
    expect(after.line.evennessGap!).toBeLessThan(before.line.evennessGap!);
    expect(after.line.evennessGap!).toBeLessThan(0.02);
  });
  it('gives gaps by their sides: the line reads Marketplace Avenue Wyandot', () => {
    const letters = pack.letters.map((glyph) => pack.glyphs[glyph]!.cluster);
    const names = (kind: Parameters<typeof gapsOfKind>[1]) =>
      gapsOfKind(pack, kind).map((gap) => `${letters[gap]}${letters[gap + 1]}`);
    // Common practice: A, v and W slant, r is open on the right; d and o are round towards each other's neighbours.
    expect(names('open')).toEqual(expect.arrayContaining(['Av', 'rk', 'Wy']));
    expect(names('round')).toContain('do');
    expect(names('any')).not.toContain('eA');
  });
});
