import { expect, test } from 'vitest';
import { dateTimeWords } from '@/shared/text/when-words';

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
