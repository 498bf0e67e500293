import { Temporal } from 'temporal-polyfill';

/** A clock time some days from today, in the course's zone: `localInstant(now, 'Europe/Lisbon', -5, '23:00')`. */
export const localInstant = (now: Date, timeZone: string, days: number, clock: string): Date =>
  new Date(
    Temporal.Instant.fromEpochMilliseconds(now.getTime())
      .toZonedDateTimeISO(timeZone)
      .toPlainDate()
      .add({ days })
      .toPlainDateTime(clock)
      .toZonedDateTime(timeZone).epochMilliseconds,
  );
