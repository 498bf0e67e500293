'use client';

import { useSyncExternalStore } from 'react';
import { dateTimeWords, zoneName } from '@/shared/text/when-words';

/** The zone of a time, in brackets, unless the reader's own clock shows the same time; always without scripts. */
export function Zone({ at, timeZone }: { at: string; timeZone: string }) {
  const shown = useSyncExternalStore(
    unchanging,
    () => differs(new Date(at), timeZone),
    () => true,
  );
  return shown ? ` (${zoneName(new Date(at), timeZone)})` : null;
}

const unchanging = () => () => undefined;

const differs = (at: Date, timeZone: string): boolean =>
  dateTimeWords(at, timeZone, true) !== dateTimeWords(at, Intl.DateTimeFormat().resolvedOptions().timeZone, true);
