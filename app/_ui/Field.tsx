'use client';

import type { ComponentProps, ReactNode } from 'react';
import { classes } from './classes';
import { useFormField } from './form-context';

type Props = FieldWords & Omit<ComponentProps<'input'>, 'id' | 'name' | 'className'>;

/** A one-line field. Keeps what was typed when the form comes back with errors (passwords excepted). */
export function Field({ name, label, hint, error, optional, short, defaultValue, ...input }: Props) {
  const form = useFormField(name);
  const shown = form.error ?? error;
  return (
    <FieldFrame {...{ name, label, hint, optional, short }} error={shown}>
      <input
        type="text"
        required={!optional}
        {...input}
        {...controlAttributes(name, hint, shown)}
        defaultValue={input.value === undefined ? (form.typed ?? defaultValue) : undefined}
      />
    </FieldFrame>
  );
}

export type FieldWords = {
  name: string;
  label: ReactNode;
  hint?: ReactNode;
  /** Shown when the surrounding form has none of its own for this field. */
  error?: string;
  /** A word beside the label; fields without it are required. */
  optional?: boolean;
  /** For figures: a short box. */
  short?: boolean;
};

/** The id of a field, which error summaries link to. */
export const fieldId = (name: string) => `field-${name}`;

/** The attributes that tie a control to its hint and error. */
export function controlAttributes(name: string, hint: ReactNode, error: string | undefined) {
  const described = [hint ? `${fieldId(name)}-hint` : '', error ? `${fieldId(name)}-error` : '']
    .filter(Boolean)
    .join(' ');
  return {
    id: fieldId(name),
    name,
    'aria-invalid': error ? (true as const) : undefined,
    'aria-describedby': described || undefined,
  };
}

/** Label above, hint and error below a control. */
export function FieldFrame({
  name,
  label,
  hint,
  error,
  optional,
  short,
  children,
}: FieldWords & { children: ReactNode }) {
  return (
    <div className={classes('field', short && 'field-short')}>
      <label htmlFor={fieldId(name)}>
        {label}
        {optional && <span className="needless"> (optional)</span>}
      </label>
      {children}
      <FieldNotes name={name} hint={hint} error={error} />
    </div>
  );
}

/** The hint and the error of a field, with the ids that `controlAttributes` points at. */
export function FieldNotes({ name, hint, error }: { name: string; hint?: ReactNode; error?: string | undefined }) {
  return (
    <>
      {hint && (
        <p className="hint" id={`${fieldId(name)}-hint`}>
          {hint}
        </p>
      )}
      {error && (
        <p className="field-error" id={`${fieldId(name)}-error`}>
          {error}
        </p>
      )}
    </>
  );
}

type TextAreaProps = FieldWords & Omit<ComponentProps<'textarea'>, 'id' | 'name' | 'className'>;

/** A field of several lines, which grows with its text. */
export function TextArea({ name, label, hint, error, optional, short, defaultValue, ...area }: TextAreaProps) {
  const form = useFormField(name);
  const shown = form.error ?? error;
  return (
    <FieldFrame {...{ name, label, hint, optional, short }} error={shown}>
      <textarea
        rows={4}
        required={!optional}
        {...area}
        {...controlAttributes(name, hint, shown)}
        defaultValue={area.value === undefined ? (form.typed ?? defaultValue) : undefined}
      />
    </FieldFrame>
  );
}

type CheckboxProps = { name: string; label: ReactNode; hint?: ReactNode; error?: string; value?: string } & Omit<
  ComponentProps<'input'>,
  'id' | 'name' | 'className' | 'type' | 'value'
>;

/** A yes or no. With a `value`, several of one name make a list; without, it sends “yes”. */
export function Checkbox({ name, label, hint, error, value = 'yes', defaultChecked, ...input }: CheckboxProps) {
  const form = useFormField(name);
  const shown = form.error ?? error;
  const chosen = form.ticked === undefined ? defaultChecked : form.ticked.includes(value);
  const key = value === 'yes' ? name : `${name}-${value}`;
  return (
    <div className="field">
      <div className="choice">
        <input
          type="checkbox"
          key={String(chosen)}
          {...input}
          {...controlAttributes(key, hint, shown)}
          name={name}
          value={value}
          defaultChecked={input.checked === undefined ? chosen : undefined}
        />
        <label htmlFor={fieldId(key)}>{label}</label>
        <FieldNotes name={key} hint={hint} error={shown} />
      </div>
    </div>
  );
}

type DateTimeFieldProps = FieldWords & {
  /** Local date and time, `YYYY-MM-DDTHH:MM`, in the zone below. */
  defaultValue?: string;
  /** The IANA time zone of the typed time, e.g. `Europe/Vienna`; shown in words under the field. */
  timeZone: string;
  min?: string;
  max?: string;
};

/** A date and time as people type it. The zone is the course's and is shown, never guessed from the browser. */
export function DateTimeField({ timeZone, hint, ...rest }: DateTimeFieldProps) {
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

/** 'Europe/Vienna' -> 'Vienna (Europe/Vienna)': people know the city, and the IANA name is exact. */
function zoneWords(timeZone: string): string {
  const city = timeZone.split('/').at(-1)!.replaceAll('_', ' ');
  return city === timeZone ? timeZone : `${city} (${timeZone})`;
}
