'use client';

import type { ComponentProps } from 'react';
import { controlAttributes, FieldFrame, fieldId, FieldNotes, type FieldWords } from './Field';
import { classes } from './classes';
import { useFormField } from './form-context';

type Choice = { value: string; label: string; hint?: string; group?: string };
type Props = FieldWords &
  Omit<ComponentProps<'select'>, 'id' | 'name' | 'className' | 'multiple'> & {
    choices: Choice[];
    placeholder?: string;
  };

/** One of several, from a list; choices with a `group` are listed under its name. */
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
      {/*
       * The key makes a new element when a choice is restored: resetting the form would otherwise show the first
       * choice.
       */}
      <select
        key={String(chosen)}
        // HTML wants a required list to begin with an empty choice; without one something is always chosen.
        required={!optional && placeholder !== undefined}
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

type RadioGroupProps = FieldWords & {
  choices: Choice[];
  defaultValue?: string;
  row?: boolean;
  value?: string;
  onChange?: (value: string) => void;
  disabled?: boolean;
};

/** One of a few, all in view, each with a hint if it needs one. */
export function RadioGroup({
  name,
  label,
  hint,
  error,
  optional,
  choices,
  defaultValue,
  row,
  value,
  onChange,
  disabled,
}: RadioGroupProps) {
  const form = useFormField(name);
  const shown = form.error ?? error;
  const chosen = form.typed ?? defaultValue;
  const described = [hint ? `${fieldId(name)}-hint` : '', shown ? `${fieldId(name)}-error` : '']
    .filter(Boolean)
    .join(' ');
  return (
    <fieldset
      className="field"
      id={fieldId(name)}
      aria-describedby={described || undefined}
      disabled={disabled}
      key={String(chosen)}
    >
      <legend>
        {label}
        {optional && <span className="needless"> (optional)</span>}
      </legend>
      <div className={classes(row && 'choices-row')}>
        {choices.map((choice) => {
          const id = `${fieldId(name)}-${choice.value}`;
          return (
            <div className="choice" key={choice.value}>
              <input
                type="radio"
                id={id}
                name={name}
                value={choice.value}
                aria-describedby={choice.hint ? `${id}-hint` : undefined}
                {...(value === undefined
                  ? { defaultChecked: chosen === choice.value }
                  : { checked: value === choice.value, onChange: () => onChange?.(choice.value) })}
              />
              <label htmlFor={id}>{choice.label}</label>
              {choice.hint && (
                <span className="hint" id={`${id}-hint`}>
                  {choice.hint}
                </span>
              )}
            </div>
          );
        })}
      </div>
      <FieldNotes name={name} hint={hint} error={shown} />
    </fieldset>
  );
}
