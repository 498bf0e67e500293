'use client';
import { classes } from './classes';
import { fieldId, FieldNotes, type FieldWords } from './FieldFrame';
import { useFormField } from './form-context';
import type { Choice } from './Select';

type Props = FieldWords & {
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
}: Props) {
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
        {optional && <span className="needless"> (may be left empty)</span>}
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
