'use client';
import type { ComponentProps, ReactNode } from 'react';
import { controlAttributes, FieldNotes, fieldId } from './FieldFrame';
import { useFormField } from './form-context';

type Props = { name: string; label: ReactNode; hint?: ReactNode; error?: string; value?: string } & Omit<
  ComponentProps<'input'>,
  'id' | 'name' | 'className' | 'type' | 'value'
>;

/** A yes or no. With a `value`, several of one name make a list; without, it sends “yes”. */
export function Checkbox({ name, label, hint, error, value = 'yes', defaultChecked, ...input }: Props) {
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
