'use client';
import type { ReactNode } from 'react';
import { classes } from './classes';

export type FieldWords = {
  name: string;
  label: ReactNode;
  hint?: ReactNode;
  /** Shown when the surrounding form has none of its own for this field. */
  error?: string;
  /** Said beside the label; fields without it are needed. */
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

/** Label over, hint and error under a control. */
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
        {optional && <span className="needless"> (may be left empty)</span>}
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
