import type { ReactNode } from 'react';
import { counted } from '@/shared/text/number';
import { dateTimeWords, shortDateTimeWords } from '@/shared/text/when-words';
import { Zone } from './Zone';
import { classes } from './classes';

/** A state in a word or two: a tick before what is done, a dash before what has begun. Colour only repeats it. */
export function Status({ kind, children }: { kind: 'waiting' | 'going' | 'done' | 'late'; children: ReactNode }) {
  return <span className={classes('status', kind !== 'waiting' && `status-${kind}`)}>{children}</span>;
}

/** Progress, in words first: “7 of 12 lines set”. The bar only repeats it. */
export function Progress({ done, of, what, verb = 'done' }: { done: number; of: number; what: string; verb?: string }) {
  const words = done >= of && of > 0 ? `all ${counted(of, what)} ${verb}` : `${done} of ${counted(of, what)} ${verb}`;
  return (
    <span className="progress">
      <progress value={done} max={Math.max(of, 1)} aria-hidden="true" /> <span>{words}</span>
    </span>
  );
}

/**
 * An instant as briefly as it is plain: “24 Nov, 23:05”, with the zone and the reader's own time where the reader's clock
 * shows another. `short` leaves both out, for lists whose page tells the zone; `yours` with it keeps the reader's own
 * time. Pointing at it shows weekday, year and zone.
 */
export function When({ at, timeZone, short, yours }: WhenProps) {
  const instant = typeof at === 'string' ? new Date(at) : at;
  return (
    <time dateTime={instant.toISOString()} title={dateTimeWords(instant, timeZone)}>
      {shortDateTimeWords(instant, timeZone, today())}
      {(!short || yours) && <Zone at={instant.toISOString()} timeZone={timeZone} yoursOnly={short ?? false} />}
    </time>
  );
}

type WhenProps = { at: Date | string; timeZone: string; short?: boolean; yours?: boolean };

const today = () => new Date();
