import { Temporal } from 'temporal-polyfill';

/** A clock time some days from today, in the course's zone: `localInstant(now, 'Europe/Lisbon', -5, '23:00')`. */
export const localInstant = (now: Date, timeZone: string, days: number, clock: string): Date =>
  new Date(dayFrom(now, timeZone, days).toPlainDateTime(clock).toZonedDateTime(timeZone).epochMilliseconds);

/** The same as the zone writes it, e.g. `2026-11-24T09:00`. */
export const localTime = (now: Date, timeZone: string, days: number, clock: string): string =>
  `${dayFrom(now, timeZone, days).toString()}T${clock}`;

/** So many times 24 hours ago. */
export const daysAgo = (now: Date, days: number): { now: Date } => ({
  now: new Date(now.getTime() - days * 86_400_000),
});

const dayFrom = (now: Date, timeZone: string, days: number): Temporal.PlainDate =>
  Temporal.Instant.fromEpochMilliseconds(now.getTime()).toZonedDateTimeISO(timeZone).toPlainDate().add({ days });
