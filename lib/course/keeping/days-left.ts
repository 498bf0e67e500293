import { Temporal } from 'temporal-polyfill';

/** Before the day until which work is kept, those who teach are told this many days ahead, each once. */
export const noticeDays = [30, 7] as const;

/** Whole days from today, in the course's zone, to the last day on which work is kept: 0 on that day, below 0 after it. */
export function daysLeft(retainUntil: string, timeZone: string, now: Date): number {
  const today = Temporal.Instant.fromEpochMilliseconds(now.getTime()).toZonedDateTimeISO(timeZone).toPlainDate();
  return today.until(Temporal.PlainDate.from(retainUntil), { largestUnit: 'days' }).days;
}

/** The notice that is due: the nearest of those whose day has come; none before, and none once the day is past. */
export const noticeDue = (left: number): (typeof noticeDays)[number] | null =>
  left < 0 ? null : (noticeDays.findLast((days) => left <= days) ?? null);
