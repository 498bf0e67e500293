'use client';
import { Field } from './Field';
import type { FieldWords } from './FieldFrame';

type Props = FieldWords & {
  /** Local date and time, `YYYY-MM-DDTHH:MM`, in the zone below. */
  defaultValue?: string;
  /** The IANA zone that the typed time is meant in, e.g. `Europe/Vienna`; said in words under the field. */
  timeZone: string;
  min?: string;
  max?: string;
};

/** A date and time as people type it. The zone belongs to the course and is said, never guessed from the browser. */
export function DateTimeField({ timeZone, hint, ...rest }: Props) {
  return (
    <Field
      type="datetime-local"
      step={60}
      {...rest}
      hint={
        <>
          {hint}
          {hint && ' '}Time of {zoneWords(timeZone)}.
        </>
      }
    />
  );
}

/** 'Europe/Vienna' -> 'Vienna (Europe/Vienna)'; the city is what people know, the name is exact. */
export function zoneWords(timeZone: string): string {
  const city = timeZone.split('/').at(-1)!.replaceAll('_', ' ');
  return city === timeZone ? timeZone : `${city} (${timeZone})`;
}
