import { describe, expect, it } from 'vitest';
import { lateness } from '@/shared/exercise/rounds';
import type { LateRule } from '@/shared/schemas/exercise';

const rule = (change: Partial<LateRule> = {}): LateRule => ({
  accept: 'always',
  untilLocal: null,
  untilAt: null,
  deductPerDay: 0,
  ...change,
});
const round = (lateRule: LateRule) => ({
  opensAt: new Date('2026-11-01T08:00:00Z'),
  dueAt: new Date('2026-11-10T18:00:00Z'),
  lateRule,
});
const at = (text: string) => new Date(text);

// Expected answers are counted by hand on the calendar.
describe('lateness', () => {
  it('takes nothing before the round opens', () => {
    expect(lateness(round(rule()), at('2026-11-01T07:59:59Z'))).toEqual({
      accepted: false,
      late: false,
      why: 'not-open',
    });
    expect(lateness(round(rule()), at('2026-11-01T08:00:00Z'))).toEqual({ accepted: true, late: false });
  });
  it('counts a proof received at the due instant as in time, and one a millisecond later as late', () => {
    expect(lateness(round(rule()), at('2026-11-10T18:00:00.000Z'))).toEqual({ accepted: true, late: false });
    expect(lateness(round(rule()), at('2026-11-10T18:00:00.001Z'))).toEqual({
      accepted: true,
      late: true,
      daysLate: 1,
      deductPercent: 0,
    });
  });
  it('deducts for every started day, and never more than everything', () => {
    const strict = round(rule({ deductPerDay: 15 }));
    expect(lateness(strict, at('2026-11-11T18:00:00Z'))).toMatchObject({ daysLate: 1, deductPercent: 15 });
    expect(lateness(strict, at('2026-11-11T18:00:01Z'))).toMatchObject({ daysLate: 2, deductPercent: 30 });
    expect(lateness(strict, at('2026-11-30T18:00:00Z'))).toMatchObject({ daysLate: 20, deductPercent: 100 });
  });
  it('takes no late proof where the rule says so, nor after a last date', () => {
    expect(lateness(round(rule({ accept: 'none' })), at('2026-11-10T18:00:01Z'))).toMatchObject({
      accepted: false,
      why: 'too-late',
    });
    const until = round(rule({ accept: 'until', untilAt: '2026-11-12T18:00:00Z' }));
    expect(lateness(until, at('2026-11-12T18:00:00Z'))).toMatchObject({ accepted: true, late: true, daysLate: 2 });
    expect(lateness(until, at('2026-11-12T18:00:01Z'))).toMatchObject({ accepted: false, late: true, why: 'too-late' });
  });
  it('gives a member more time, and the last date with it', () => {
    const until = round(rule({ accept: 'until', untilAt: '2026-11-12T18:00:00Z' }));
    const extended = at('2026-11-13T18:00:00Z');
    expect(lateness(until, at('2026-11-13T18:00:00Z'), extended)).toEqual({ accepted: true, late: false });
    expect(lateness(until, at('2026-11-15T18:00:00Z'), extended)).toMatchObject({ accepted: true, daysLate: 2 });
    expect(lateness(until, at('2026-11-15T18:00:01Z'), extended)).toMatchObject({ accepted: false });
    expect(lateness(until, at('2026-11-10T17:00:00Z'), at('2026-11-09T18:00:00Z'))).toEqual({
      accepted: true,
      late: false,
    });
  });
  it('knows no lateness without a due date', () => {
    expect(
      lateness({ opensAt: null, dueAt: null, lateRule: rule({ accept: 'none' }) }, at('2030-01-01T00:00:00Z')),
    ).toEqual({ accepted: true, late: false });
  });
});
