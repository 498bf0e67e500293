'use client';
import type { ComponentProps } from 'react';
import { controlAttributes, FieldFrame, type FieldWords } from './FieldFrame';
import { useFormField } from './form-context';

export type Choice = { value: string; label: string; hint?: string; group?: string };
type Props = FieldWords &
  Omit<ComponentProps<'select'>, 'id' | 'name' | 'className' | 'multiple'> & {
    choices: Choice[];
    placeholder?: string;
  };

/** One of several, from a list; choices with a `group` stand under its name. */
export function Select({
  name,
  label,
  hint,
  error,
  optional,
  short,
  choices,
  placeholder,
  defaultValue,
  ...select
}: Props) {
  const form = useFormField(name);
  const shown = form.error ?? error;
  const chosen = form.typed ?? defaultValue;
  const groups = [...new Set(choices.map((choice) => choice.group ?? ''))];
  return (
    <FieldFrame {...{ name, label, hint, optional, short }} error={shown}>
      {/* The key makes a fresh element when a choice comes back: a reset would else show the first choice. */}
      <select
        key={String(chosen)}
        required={!optional}
        {...select}
        {...controlAttributes(name, hint, shown)}
        defaultValue={select.value === undefined ? chosen : undefined}
      >
        {placeholder !== undefined && <option value="">{placeholder}</option>}
        {groups.map((group) => {
          const options = choices.filter((choice) => (choice.group ?? '') === group);
          const list = options.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.label}
            </option>
          ));
          return group ? (
            <optgroup key={group} label={group}>
              {list}
            </optgroup>
          ) : (
            list
          );
        })}
      </select>
    </FieldFrame>
  );
}
