'use client';
import type { ComponentProps } from 'react';
import { controlAttributes, FieldFrame, type FieldWords } from './FieldFrame';
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
