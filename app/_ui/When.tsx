import { dateTimeWords } from '@/shared/text/when-words';

/** An instant in words, with date and zone: “Tuesday 24 November 2026, 23:05 (Vienna, UTC+1)”. */
export function When({ at, timeZone, short }: { at: Date | string; timeZone: string; short?: boolean }) {
  const instant = typeof at === 'string' ? new Date(at) : at;
  return <time dateTime={instant.toISOString()}>{dateTimeWords(instant, timeZone, short)}</time>;
}
