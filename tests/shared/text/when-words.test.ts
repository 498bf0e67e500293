import { expect, test } from 'vitest';
import { dateTimeWords, shortDateTimeWords } from '@/shared/text/when-words';

test('an instant is told with its zone, in which no line ends', () => {
  // Summer time ends on 25 October 2026, 01:00 UTC.
  expect(dateTimeWords(new Date('2026-10-24T22:05:00Z'), 'Europe/Vienna')).toBe(
    'Sunday 25 October 2026, 00:05 (Vienna,\u00A0UTC+2)',
  );
  expect(dateTimeWords(new Date('2026-10-25T01:05:00Z'), 'Europe/Vienna')).toBe(
    'Sunday 25 October 2026, 02:05 (Vienna,\u00A0UTC+1)',
  );
  expect(dateTimeWords(new Date('2026-12-07T18:00:00Z'), 'America/New_York')).toBe(
    'Monday 7 December 2026, 13:00 (New\u00A0York,\u00A0UTC\u22125)',
  );
  expect(dateTimeWords(new Date('2026-12-07T18:00:00Z'), 'UTC')).toBe('Monday 7 December 2026, 18:00 (UTC)');
  expect(dateTimeWords(new Date('2026-12-07T18:00:00Z'), 'UTC', true)).toBe('7 Dec 2026, 18:00');
});

test('an instant is short where the year is plain', () => {
  const now = new Date('2026-11-30T12:00:00Z');
  const words = (at: string, zone = 'Europe/Vienna') => shortDateTimeWords(new Date(at), zone, now);
  expect(words('2026-11-25T17:00:00Z')).toBe('25 Nov, 18:00');
  // New Year's Eve in New York is already the next year in Vienna.
  expect(words('2026-12-31T23:30:00Z')).toBe('1 Jan 2027, 00:30');
  expect(words('2026-12-31T23:30:00Z', 'America/New_York')).toBe('31 Dec, 18:30');
});
