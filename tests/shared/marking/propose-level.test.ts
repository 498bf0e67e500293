import { describe, expect, it } from 'vitest';
import { proposeLevel, type MeasuredLine } from '@/shared/marking/propose-level';

type Pair = {
  within?: boolean;
  surprise?: number;
  outside?: boolean | null;
  contact?: 'apart' | 'touching' | 'crossing';
};

/** Only what the proposal looks at. */
function line(pairs: Pair[], hasReference = true): MeasuredLine {
  return {
    measure: {
      letters: [...'HAMOVELINTRUSK'],
      pairs: pairs.map((pair, index) => ({
        index,
        surprise: pair.surprise ?? null,
        outside: pair.outside ?? (pair.surprise === undefined ? null : false),
        contact: pair.contact ?? 'apart',
      })),
    },
    comparison: hasReference
      ? { nearest: 0, meantContacts: [], pairs: pairs.map((pair, index) => ({ index, within: pair.within ?? false })) }
      : null,
  } as unknown as MeasuredLine;
}

const times = (count: number, pair: Pair): Pair[] => Array.from({ length: count }, () => pair);

describe('a level proposed from the nearest reference', () => {
  it('cuts the share within tolerance into equal steps and shows it', () => {
    const lines = [
      line([{ within: true }, { within: true }, { within: true }, {}]),
      line([{ within: true }, { within: true }, {}, {}]),
    ];
    // By hand: 5 of 8 = 62.5%, the third of four steps (50 to 75%).
    const proposed = proposeLevel('distance', lines, 4);
    expect(proposed?.level).toBe(2);
    expect(proposed?.arithmetic).toBe(
      '5 of 8 pairs are within tolerance of the nearest reference: 62.5%. In 4 equal steps that is step 3, 50% to 75%.',
    );
  });
  it('goes to the top level only at its step, all within included', () => {
    expect(proposeLevel('distance', [line(times(6, { within: true }))], 4)?.level).toBe(3);
    expect(proposeLevel('distance', [line(times(6, {}))], 4)?.level).toBe(0);
  });
  it('is none under six pairs, nor without a reference', () => {
    expect(proposeLevel('distance', [line(times(5, { within: true }))], 4)).toBeNull();
    expect(proposeLevel('distance', [line(times(9, { within: true }), false)], 4)).toBeNull();
  });
});

describe('a level proposed from evenness', () => {
  it('is the top one for a line that no designer would find unusual', () => {
    expect(proposeLevel('evenness', [line(times(8, { surprise: 0.9 }), false)], 4)?.level).toBe(3);
  });
  it('is never above what the worst pair allows: one hole in a good line takes levels', () => {
    const hole = (surprise: number) => line([...times(19, { surprise: 0.2 }), { surprise, outside: true }], false);
    expect(proposeLevel('evenness', [hole(1.4)], 4)?.level).toBe(2);
    expect(proposeLevel('evenness', [hole(-1.4)], 4)?.level).toBe(2);
    expect(proposeLevel('evenness', [hole(2.4)], 4)?.level).toBe(1);
    expect(proposeLevel('evenness', [hole(-9)], 4)?.level).toBe(0);
  });
  it('names the pair that caps it', () => {
    const pairs = times(8, { surprise: 0.2 });
    pairs[3] = { surprise: 2.4, outside: true };
    expect(proposeLevel('evenness', [line(pairs, false)], 4)?.arithmetic).toContain(
      'The worst pair, OV, allows level 2 at most.',
    );
  });
  it('does not count a pair against a line that is surprising and still inside the range', () => {
    expect(proposeLevel('evenness', [line(times(8, { surprise: 3, outside: false }), false)], 4)?.level).toBe(3);
  });
  it('is none under six pairs that can be judged', () => {
    expect(proposeLevel('evenness', [line([...times(5, { surprise: 0 }), ...times(5, {})], false)], 4)).toBeNull();
  });
});

describe('a level proposed from contact', () => {
  it('goes one level down for each pair that touches or crosses, never under the lowest', () => {
    expect(proposeLevel('contact', [line([{ contact: 'touching' }, {}])], 4)?.level).toBe(2);
    expect(proposeLevel('contact', [line([{ contact: 'crossing' }, {}])], 4)?.level).toBe(2);
    expect(proposeLevel('contact', [line([{ contact: 'touching' }, { contact: 'crossing' }])], 2)?.level).toBe(0);
    expect(proposeLevel('contact', [line([{}, {}])], 4)?.level).toBe(3);
    expect(proposeLevel('contact', [], 4)).toBeNull();
  });
  it('takes none for letters that touch in the reference too', () => {
    const meant = line([{ contact: 'touching' }, { contact: 'crossing' }]);
    meant.comparison!.meantContacts = [0];
    expect(proposeLevel('contact', [meant], 4)?.level).toBe(2);
  });
});

it('no level can be proposed for a criterion without levels', () => {
  expect(() => proposeLevel('contact', [], 0)).toThrow(/0 levels/);
});
