import { describe, expect, it } from 'vitest';
import { proposeLevel, type MeasuredLine } from '@/shared/marking/propose-level';

type Pair = { within?: boolean; suggestion?: number | null; offset?: number; contact?: 'apart' | 'touching' };

/** Only what the proposal looks at. */
function line(pairs: Pair[], hasReference = true): MeasuredLine {
  return {
    tolerance: 10,
    measure: {
      pairs: pairs.map((pair, index) => ({
        index,
        offset: pair.offset ?? 0,
        suggestion: pair.suggestion ?? null,
        contact: pair.contact ?? 'apart',
      })),
    },
    comparison: hasReference
      ? { nearest: 0, meantContacts: [], pairs: pairs.map((pair, index) => ({ index, within: pair.within ?? false })) }
      : null,
  } as unknown as MeasuredLine;
}

describe('a proposed level', () => {
  it('cuts the share within tolerance into equal steps and shows it', () => {
    const lines = [
      line([{ within: true }, { within: true }, { within: true }, {}]),
      line([{ within: true }, { within: true }, {}, {}]),
    ];
    // By hand: 5 of 8 = 62.5 %, the third of four steps (50 to 75 %).
    const proposed = proposeLevel('distance', lines, 4);
    expect(proposed?.level).toBe(2);
    expect(proposed?.arithmetic).toBe(
      '5 of 8 pairs are within tolerance of the nearest reference: 62.5\u202F%. In 4 equal steps that is step 3, 50\u202F% to 75\u202F%.',
    );
  });
  it('goes to the top level only at its step, all within included', () => {
    expect(proposeLevel('distance', [line([{ within: true }])], 4)?.level).toBe(3);
    expect(proposeLevel('distance', [line([{}])], 4)?.level).toBe(0);
  });
  it('is none without anything to go by', () => {
    expect(proposeLevel('distance', [line([{ within: true }], false)], 4)).toBeNull();
    expect(proposeLevel('evenness', [line([{ suggestion: null }])], 4)).toBeNull();
    expect(proposeLevel('contact', [], 4)).toBeNull();
  });
  it('takes evenness from the middle of the line itself', () => {
    expect(
      proposeLevel('evenness', [line([{ suggestion: 10 }, { suggestion: -11 }, { suggestion: null }], false)], 2)
        ?.level,
    ).toBe(1);
  });
  it('goes one level down for each contact, never under the lowest', () => {
    expect(proposeLevel('contact', [line([{ contact: 'touching' }, {}])], 4)?.level).toBe(2);
    expect(proposeLevel('contact', [line([{ contact: 'touching' }, { contact: 'touching' }])], 2)?.level).toBe(0);
  });
});
