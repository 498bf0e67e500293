'use client';
import type { ComponentProps } from 'react';
import { controlAttributes, FieldFrame, type FieldWords } from './FieldFrame';
import { useFormField } from './form-context';

type Props = FieldWords & Omit<ComponentProps<'textarea'>, 'id' | 'name' | 'className'>;

/** A field of several lines, which grows with what is written. */
export function TextArea({ name, label, hint, error, optional, short, defaultValue, ...area }: Props) {
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
