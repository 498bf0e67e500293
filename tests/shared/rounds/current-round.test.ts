import { describe, expect, it } from 'vitest';
import { currentRound, dueForMember, nextRound } from '@/shared/exercise/rounds';

// Expected values by hand, from the rules as students read them.
const round = (number: number, opensAt: number | null, releasedToMember = false) => ({
  number,
  opensAt,
  dueAt: null,
  releasedToMember,
});

describe('currentRound', () => {
  it('is the highest round that is open', () => {
    const rounds = [round(2, 50), round(1, 10), round(3, 90)];
    expect(currentRound(rounds, 60)?.number).toBe(2);
    expect(nextRound(rounds, 60)?.number).toBe(3);
  });
  it('opens at its instant, not after it', () => expect(currentRound([round(1, 10)], 10)?.number).toBe(1));
  it('is none before the first opens', () => expect(currentRound([round(1, 10)], 9)).toBeNull());
  it('opens a round without a date when the one before was released to this member', () => {
    expect(currentRound([round(1, null), round(2, null)], 0)?.number).toBe(1);
    expect(currentRound([round(1, null, true), round(2, null)], 0)?.number).toBe(2);
  });
});

describe('dueForMember', () => {
  const terms = { opensAt: 1000, dueAt: 2000, extendedTo: null, moreTime: 0 };
  it('is the round’s own without anything else', () => expect(dueForMember(terms)).toBe(2000));
  it('is a quarter of the round later for a quarter more time', () =>
    expect(dueForMember({ ...terms, moreTime: 25 })).toBe(2250));
  it('takes the later of extension and accommodation', () => {
    expect(dueForMember({ ...terms, moreTime: 25, extendedTo: 2100 })).toBe(2250);
    expect(dueForMember({ ...terms, moreTime: 25, extendedTo: 2400 })).toBe(2400);
  });
  it('never moves a date forward', () => expect(dueForMember({ ...terms, extendedTo: 1500 })).toBe(2000));
  it('stays without a date', () => expect(dueForMember({ ...terms, dueAt: null, moreTime: 100 })).toBeNull());
});
