import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand, type Command } from '@/shared/editing/commands';
import { assertFits, builtInDocument, OFFSET_LIMIT, sameDocument } from '@/shared/editing/document';

const line = (...offsets: number[]) => ({ tracking: 0, offsets });

describe('commands on a line of four pairs', () => {
  it('nudges a run given in either order and leaves the rest', () => {
    expect(applyCommand(line(1, 2, 3, 4), { kind: 'nudge', run: { first: 2, last: 1 }, by: -5 }).offsets).toEqual([
      1, -3, -2, 4,
    ]);
  });
  it('keeps tracking apart from offsets', () => {
    const tracked = applyCommand(line(1, 2, 3, 4), { kind: 'set tracking', tracking: -15 });
    expect(tracked).toEqual({ tracking: -15, offsets: [1, 2, 3, 4] });
  });
  it('puts one pair, or the line with its tracking, back to built-in', () => {
    expect(applyCommand(line(1, 2, 3, 4), { kind: 'reset', run: { first: 3, last: 3 } }).offsets).toEqual([1, 2, 3, 0]);
    expect(applyCommand({ tracking: 9, offsets: [1, 2] }, { kind: 'reset line' })).toEqual(builtInDocument(2));
  });
  it('puts one pair, or the line, back to what the line began from', () => {
    const to = { tracking: -20, offsets: [0, 40, 0, 7] };
    expect(applyCommand(line(1, 2, 3, 4), { kind: 'reset', run: { first: 1, last: 1 }, to }).offsets).toEqual([
      1, 40, 3, 4,
    ]);
    expect(applyCommand(line(1, 2, 3, 4), { kind: 'reset line', to })).toEqual(to);
  });
  it('moves a letter between its neighbours without moving anything else', () => {
    expect(applyCommand(line(0, 10, 20, 0), { kind: 'shift letter', letter: 2, by: 7 }).offsets).toEqual([
      0, 17, 13, 0,
    ]);
  });
  it('stops both gaps of a letter when one reaches the limit', () => {
    expect(applyCommand(line(1995, 10), { kind: 'shift letter', letter: 1, by: 50 }).offsets).toEqual([2000, 5]);
  });
  it('quotes a pair that is not there and a number that is none', () => {
    expect(() => applyCommand(line(0), { kind: 'nudge', run: { first: 0, last: 3 }, by: 1 })).toThrow(
      'from pair 0 to 3 in a line of 1 pairs',
    );
    expect(() => applyCommand(line(0), { kind: 'set tracking', tracking: Number.NaN })).toThrow('NaN');
    expect(() => applyCommand(line(0), { kind: 'take spacing', tracking: 0, offsets: [1, 2] })).toThrow(
      'has 1 pairs; the spacing to be taken over has 2',
    );
  });
});

describe('any command', () => {
  const pairs = 6;
  const amount = fc.double({ min: -5000, max: 5000, noNaN: true });
  const run = fc.record({ first: fc.nat(pairs - 1), last: fc.nat(pairs - 1) });
  const command: fc.Arbitrary<Command> = fc.oneof(
    fc.record({ kind: fc.constant('nudge' as const), run, by: amount }),
    fc.record({ kind: fc.constant('set offset' as const), run, offset: amount }),
    fc.record({ kind: fc.constant('nudge tracking' as const), by: amount }),
    fc.record({ kind: fc.constant('shift letter' as const), letter: fc.nat(pairs), by: amount }),
    fc.record({ kind: fc.constant('reset' as const), run }),
  );

  it('leaves whole numbers within the limit and does not touch what it was given', () => {
    fc.assert(
      fc.property(fc.array(command, { maxLength: 30 }), (commands) => {
        let document = builtInDocument(pairs);
        for (const next of commands) {
          const frozen = JSON.stringify(document);
          const after = applyCommand(document, next);
          expect(JSON.stringify(document)).toBe(frozen);
          document = after;
        }
        assertFits(document, pairs);
      }),
    );
  });

  it('shifting an inner letter never changes the length of the line', () => {
    const offsets = fc.array(fc.integer({ min: -OFFSET_LIMIT, max: OFFSET_LIMIT }), {
      minLength: pairs,
      maxLength: pairs,
    });
    fc.assert(
      fc.property(offsets, fc.integer({ min: 1, max: pairs - 1 }), amount, (before, letter, by) => {
        const sum = (list: readonly number[]) => list.reduce((total, value) => total + value, 0);
        expect(sum(applyCommand({ tracking: 0, offsets: before }, { kind: 'shift letter', letter, by }).offsets)).toBe(
          sum(before),
        );
      }),
    );
  });

  it('a document equals its own copy and nothing else', () => {
    expect(sameDocument(line(1, 2), line(1, 2))).toBe(true);
    expect(sameDocument(line(1, 2), line(1, 3))).toBe(false);
    expect(sameDocument({ ...line(1), reasons: ['open side'] }, line(1))).toBe(false);
  });
});
