import { describe, expect, it } from 'vitest';
import { classSummarySchema, summarise, type LineFacts, type LineOfMember } from '@/shared/class/summary';

const facts: LineFacts[] = [
  {
    specimenVersionId: 'v1',
    specimenId: 's1',
    text: 'HOV',
    letters: ['H', 'O', 'V'],
    sides: [
      ['straight', 'round'],
      ['round', 'slanted-out'],
    ],
  },
];

const line = (memberId: string, offsets: number[], rests: number[] | null, tracking = 0): LineOfMember => ({
  memberId,
  specimenVersionId: 'v1',
  tracking,
  offsets,
  judged: rests && {
    yardstick: 'reference',
    tightness: rests[0]! + 1,
    pairs: rests.map((rest) => ({ rest, within: Math.abs(rest) <= 10 })),
  },
});

describe('a class summed up', () => {
  const summary = summarise(
    facts,
    [line('a', [0, 0], [0, 20]), line('b', [5, 5], [4, 40]), line('c', [5, 5], [8, 60]), line('d', [1, 2], null)],
    4,
  );

  it('has the median and quartiles of every pair, and who is outside', () => {
    // By hand: of 20, 40, 60 the median is 40, the quartiles of type 7 are 30 and 50.
    expect(summary.lines[0]!.pairs[1]).toEqual({
      letters: 'OV',
      sides: ['round', 'slanted-out'],
      spread: { median: 40, lower: 30, upper: 50 },
      judged: 3,
      outside: 3,
    });
    expect(summary.lines[0]!.pairs[0]).toMatchObject({ spread: { median: 4, lower: 2, upper: 6 }, outside: 0 });
    expect(summary.lines[0]).toMatchObject({
      sent: 4,
      judged: 3,
      yardstick: 'reference',
      tightness: { median: 5, lower: 3, upper: 7 },
    });
  });
  it('draws each gap as the middle of the class spaced it, tracking and offset together', () => {
    // By hand: 0, 5, 5, 1 have the median 3, and 0, 5, 5, 2 have 3.5; tracked by 2 a gap without offset is one of 2.
    expect(summary.lines[0]!.middle).toEqual({ tracking: 0, offsets: [3, 3.5] });
    const tracked = summarise(facts, [line('a', [0, 0], null, 2), line('b', [4, 4], null)], 2);
    expect(tracked.lines[0]!.middle).toEqual({ tracking: 0, offsets: [3, 3] });
    expect(summarise(facts, [], 0).lines[0]!.middle).toBeNull();
  });
  it('says what kinds of side are missed, most first', () => {
    expect(summary.sides).toEqual([
      { left: 'round', right: 'slanted-out', letters: ['OV'], pairs: 3, outside: 3, median: 40 },
      { left: 'straight', right: 'round', letters: ['HO'], pairs: 3, outside: 0, median: 4 },
    ]);
  });
  it('holds a line without a reference against the usual range, and never counts a pair that it says nothing of', () => {
    const usual = (memberId: string, pairs: ({ rest: number; within: boolean } | null)[]): LineOfMember => ({
      ...line(memberId, [0, 0], null),
      judged: { yardstick: 'usual-range', tightness: 0, pairs },
    });
    const alone = summarise(
      facts,
      [usual('a', [null, { rest: 30, within: false }]), usual('b', [null, { rest: 0, within: true }])],
      2,
    );
    expect(alone.lines[0]).toMatchObject({ judged: 2, yardstick: 'usual-range' });
    expect(alone.lines[0]!.pairs).toMatchObject([
      { judged: 0, outside: 0, spread: null },
      { judged: 2, outside: 1, spread: { median: 15 } },
    ]);
    expect(alone.sides).toEqual([
      { left: 'round', right: 'slanted-out', letters: ['OV'], pairs: 2, outside: 1, median: 15 },
    ]);
    // Once a reference is there for anybody, it alone decides.
    const both = summarise(facts, [usual('a', [null, { rest: 30, within: false }]), line('b', [0, 0], [0, 4])], 2);
    expect(both.lines[0]).toMatchObject({
      judged: 1,
      yardstick: 'reference',
      pairs: [{ judged: 1 }, { judged: 1, outside: 0 }],
    });
  });
  it('tells equal settings, unless nothing was set', () => {
    expect(summary.lines[0]!.identical).toEqual([['b', 'c']]);
    expect(summarise(facts, [line('a', [0, 0], null), line('b', [0, 0], null)], 2).lines[0]!.identical).toEqual([]);
  });
  it('keeps its shape through storage, and has nothing to say of an empty class', () => {
    expect(classSummarySchema.parse(JSON.parse(JSON.stringify(summary)))).toEqual(summary);
    expect(summarise(facts, [], 0).lines[0]!.pairs[0]!.spread).toBeNull();
  });
});
