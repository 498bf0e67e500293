import { AppError } from '@/lib/access/errors';

/** The zones of the IANA database that this server's Intl knows, UTC among them, in alphabetical order. */
export function timeZones(): string[] {
  return [...new Set(['UTC', ...Intl.supportedValuesOf('timeZone')])].sort();
}

/** @throws AppError INVALID that quotes a zone which does not exist. Gives the zone in its usual spelling. */
export function checkedTimeZone(zone: string): string {
  try {
    const known = new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone;
    // Offsets such as +02:00 are accepted by Intl, but know nothing of summer time.
    if (/^[A-Z]/i.test(zone)) return timeZones().includes(zone) ? zone : known;
  } catch {
    // Said below.
  }
  const said = `“${zone.slice(0, 40)}” is not a time zone. Choose one from the list, for example Europe/Lisbon.`;
  throw new AppError('INVALID', said, { fields: { timeZone: said } });
}
