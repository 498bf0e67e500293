import { describe, expect, it } from 'vitest';
import { meantTime } from '@/lib/exercise/local-time';

// Instants from the IANA time zone database as `zdump -v` prints it: Vienna is UTC+1, UTC+2 from 2026-03-29 01:00 UTC
// to 2026-10-25 01:00 UTC; Lord Howe moves by half an hour (UTC+11 to UTC+10:30 on 2026-04-04 15:00 UTC).
describe('meantTime', () => {
  it('reads an ordinary time in the course’s zone', () => {
    expect(meantTime('2026-11-24T18:00', 'Europe/Vienna', 'due')).toEqual({
      local: '2026-11-24T18:00',
      at: new Date('2026-11-24T17:00:00Z'),
      remark: null,
    });
    expect(meantTime('2026-07-01T18:00', 'Europe/Vienna', 'due').at).toEqual(new Date('2026-07-01T16:00:00Z'));
  });
  it('takes the kinder of two times when the clocks go back, and says which', () => {
    const due = meantTime('2026-10-25T02:30', 'Europe/Vienna', 'due');
    expect(due.at).toEqual(new Date('2026-10-25T01:30:00Z'));
    expect(due.remark).toBe(
      '02:30 on 2026-10-25 happens twice in Europe/Vienna, since the clocks go back that night. The second of the two is meant (UTC+01:00).',
    );
    expect(meantTime('2026-10-25T02:30', 'Europe/Vienna', 'opens').at).toEqual(new Date('2026-10-25T00:30:00Z'));
  });
  it('takes a time that exists when the clocks go forward, and says which', () => {
    const due = meantTime('2026-03-29T02:30', 'Europe/Vienna', 'due');
    expect(due.at).toEqual(new Date('2026-03-29T01:30:00Z'));
    expect(due.remark).toContain('does not happen in Europe/Vienna');
    expect(due.remark).toContain('03:30 is taken');
    expect(meantTime('2026-03-29T02:30', 'Europe/Vienna', 'opens').at).toEqual(new Date('2026-03-29T00:30:00Z'));
  });
  it('knows a change of half an hour', () => {
    expect(meantTime('2026-04-05T01:45', 'Australia/Lord_Howe', 'due').at).toEqual(new Date('2026-04-04T15:15:00Z'));
  });
  it('quotes what is not in the calendar', () => {
    expect(() => meantTime('2026-02-30T10:00', 'Europe/Vienna', 'due')).toThrow(
      '“2026-02-30T10:00” is not a date and time in the calendar',
    );
  });
});
