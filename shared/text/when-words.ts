/**
 * An instant in words in a named zone. `short` leaves the weekday and the zone out, for tables whose caption says the
 * zone.
 * @throws RangeError for an invalid instant or an unknown zone (quoted by Intl).
 */
export function dateTimeWords(instant: Date, timeZone: string, short = false): string {
  const part = (options: Intl.DateTimeFormatOptions) => formatter(timeZone, options).format(instant);
  const date = part({ day: 'numeric', month: short ? 'short' : 'long', year: 'numeric' });
  const time = part({ hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
  if (short) return `${date}, ${time}`;
  const weekday = part({ weekday: 'long' });
  return `${weekday} ${date}, ${time} (${zoneName(instant, timeZone)})`;
}

/**
 * An instant as briefly as it is plain: '25 Nov, 18:00', with the year where it is another than now. The zone is told
 * beside it, if at all.
 */
export function shortDateTimeWords(instant: Date, timeZone: string, now: Date): string {
  const part = (at: Date, options: Intl.DateTimeFormatOptions) => formatter(timeZone, options).format(at);
  const year = part(instant, { year: 'numeric' }) === part(now, { year: 'numeric' }) ? undefined : 'numeric';
  const date = part(instant, { day: 'numeric', month: 'short', year });
  return `${date}, ${part(instant, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' })}`;
}

/** 'Vienna, UTC+1', which no line ends in. */
export function zoneName(instant: Date, timeZone: string): string {
  const parts = formatter(timeZone, { timeZoneName: 'shortOffset' }).formatToParts(instant);
  const offset = parts
    .find((part) => part.type === 'timeZoneName')!
    .value.replace('GMT', 'UTC')
    .replace('-', '\u2212');
  const city = timeZone.split('/').at(-1)!.replaceAll('_', ' ');
  return timeZone === 'UTC' ? 'UTC' : `${city}, ${offset}`.replaceAll(' ', '\u00A0');
}

const made = new Map<string, Intl.DateTimeFormat>();

/** Making one costs far more than using it, and a page of a class has a hundred times on it. */
function formatter(timeZone: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${timeZone} ${JSON.stringify(options)}`;
  const known = made.get(key) ?? new Intl.DateTimeFormat('en-GB', { timeZone, ...options });
  made.set(key, known);
  return known;
}
