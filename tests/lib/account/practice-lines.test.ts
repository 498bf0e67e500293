import { beforeAll, describe, expect, it } from 'vitest';
import { PRACTICE_LINES } from '@/lib/account/practice-results';
import { buildPack } from '@/lib/face/build-pack';
import { leastMove } from '@/shared/practice/moved-gap';
import { measureLine } from '@/shared/scoring';
import type { Pack } from '@/shared/schemas/pack';

describe('the lines of the practice', () => {
  let packs: Pack[];
  beforeAll(async () => {
    packs = await Promise.all(
      PRACTICE_LINES.map(({ face, text }) => buildPack({ kind: 'catalogue', key: face }, text)),
    );
  }, 120_000);
  const measured = (pack: Pack) =>
    measureLine(
      pack,
      { tracking: 0, offsets: pack.builtIn.map(() => 0) },
      { size: { value: 72, unit: 'px' }, ground: 'light' },
    );

  it('are set by their designers as designers usually do: no gap of them is outside', () => {
    for (const pack of packs) {
      const outside = measured(pack).pairs.filter((pair) => pair.outside);
      expect(outside.map(({ left, right }) => `${pack.text} ${left}${right}`)).toEqual([]);
    }
  });

  it('show every kind of side', () => {
    const sides = packs.flatMap((pack) => measured(pack).pairs.flatMap(({ sides: { left, right } }) => [left, right]));
    expect(new Set(sides)).toEqual(new Set(['straight', 'round', 'slanted-in', 'slanted-out', 'open', 'arched']));
  });

  it('let a move get small: a few thousandths between straight and round sides, a fifth of a stem gap between open ones', () => {
    const least = (['any', 'straight', 'round', 'open'] as const).map((kind) => leastMove(packs, kind)!);
    for (const [at, most] of [5, 5, 5, 25].entries()) expect(least[at]).toBeLessThanOrEqual(most);
  });
});
