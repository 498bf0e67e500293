'use client';

import { useSyncExternalStore } from 'react';
import { dateTimeWords, shortDateTimeWords, zoneName } from '@/shared/text/when-words';

type Props = { at: string; timeZone: string; yoursOnly: boolean };

/**
 * Beside a time in a course's zone, in brackets: the zone and what the reader's own clock will show, unless both are the
 * same. Without scripts the zone always; with `yoursOnly` nothing but the reader's own time, and that only where it
 * differs.
 */
export function Zone({ at, timeZone, yoursOnly }: Props) {
  const yours = useSyncExternalStore(
    unchanging,
    () => ownTime(new Date(at), timeZone),
    () => unknown,
  );
  if (yours === same || (yours === unknown && yoursOnly)) return null;
  const zone = zoneName(new Date(at), timeZone);
  if (yours === unknown) return ` (${zone})`;
  return yoursOnly ? ` (${yours} for you)` : ` (${zone}; ${yours} for you)`;
}

const unchanging = () => () => undefined;
const unknown = 'unknown';
const same = 'same';

/** What the reader's clock shows then, or that it shows the same. */
function ownTime(at: Date, timeZone: string): string {
  const own = Intl.DateTimeFormat().resolvedOptions().timeZone;
  return dateTimeWords(at, timeZone, true) === dateTimeWords(at, own, true)
    ? same
    : shortDateTimeWords(at, own, new Date());
}
