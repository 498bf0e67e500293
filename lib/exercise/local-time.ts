import { Temporal } from 'temporal-polyfill';

/** An instant that a person meant by a local date and time, with what had to be decided where the clocks change. */
export type MeantTime = {
  readonly local: string;
  readonly at: Date;
  /** Null where the time happens once. */
  readonly remark: string | null;
};

/**
 * The instant of a typed local time in a zone. Where the clocks go back and the time happens twice, and where they go
 * forward and it never happens, the reading that is kinder to students is taken (`opens` the earlier, `due` the later),
 * and reported.
 * @throws RangeError that quotes a date which is not in the calendar, or an unknown zone.
 */
export function meantTime(local: string, zone: string, use: 'opens' | 'due'): MeantTime {
  const wall = plainDateTime(local);
  const earlier = wall.toZonedDateTime(zone, { disambiguation: 'earlier' });
  const later = wall.toZonedDateTime(zone, { disambiguation: 'later' });
  const taken = use === 'opens' ? earlier : later;
  const at = new Date(taken.epochMilliseconds);
  if (earlier.epochMilliseconds === later.epochMilliseconds) return { local, at, remark: null };
  const happens = later.toPlainDateTime().equals(wall);
  const clock = `${wall.toPlainTime().toString({ smallestUnit: 'minute' })} on ${wall.toPlainDate().toString()}`;
  const remark = happens
    ? `${clock} happens twice in ${zone}, since the clocks go back that night. The ${use === 'opens' ? 'first' : 'second'} of the two is meant (UTC${taken.offset}).`
    : `${clock} does not happen in ${zone}, since the clocks go forward over it. ${taken.toPlainTime().toString({ smallestUnit: 'minute' })} is taken in its place (UTC${taken.offset}).`;
  return { local, at, remark };
}

function plainDateTime(local: string): Temporal.PlainDateTime {
  try {
    return Temporal.PlainDateTime.from(local, { overflow: 'reject' });
  } catch (cause) {
    throw new RangeError(`“${local}” is not a date and time in the calendar. Write it as 2026-11-24T18:00.`, { cause });
  }
}
