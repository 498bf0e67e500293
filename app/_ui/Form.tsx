'use client';

import { type MouseEvent, type ReactNode, useEffect, useRef } from 'react';
import { useFormStatus } from 'react-dom';
import { type FormAction, type FormState, newForm } from '@/shared/schemas/form-state';
import { buttonClasses, type ButtonKind } from './Button';
import { classes } from './classes';
import { FormContext } from './form-context';
import { useFormAction } from './use-form-action';

type Props = {
  action: FormAction;
  children: ReactNode;
  /** Names the form for screen readers; needed when a page has several. */
  label?: string;
  inline?: boolean;
  /** An initial state, e.g. after a redirect. */
  initial?: FormState;
};

/**
 * A form for a server action. It works before and without JavaScript, and what was typed is still there after an error.
 * Input is checked on the server only, so the browser's own messages are off.
 */
export function Form({ action, children, label, inline, initial = newForm }: Props) {
  const [state, dispatch] = useFormAction(action, initial);
  return (
    <FormContext value={state}>
      <form action={dispatch} className={classes('form', inline && 'form-inline')} aria-label={label} noValidate>
        <FormError state={state} />
        {children}
      </form>
    </FormContext>
  );
}

/** What went wrong, in one list that takes the focus; each line links to its field. Also confirms success. */
export function FormError({ state }: { state: FormState }) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (state.status === 'failed') box.current?.focus();
  }, [state]);

  if (state.status === 'done') {
    return state.message ? (
      <div className="notice" role="status">
        {state.message}
      </div>
    ) : null;
  }
  if (state.status === 'new') return null;
  const errors = Object.entries(state.fields);
  return (
    <div className="notice notice-warning" role="alert" tabIndex={-1} ref={box}>
      <p>
        <strong>{errors.length > 0 ? 'Not saved yet. Please check:' : state.message}</strong>
      </p>
      {errors.length > 0 && (
        <ul>
          {errors.map(([name, message]) => (
            <li key={name}>
              <a href={`#field-${name}`} onClick={(event) => lead(event, name)}>
                {message}
              </a>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** To the field itself, or to the one it is a part of (`lines.0` is in `lines`). */
function lead(event: MouseEvent, name: string): void {
  for (let part = name; part !== ''; part = part.slice(0, Math.max(0, part.lastIndexOf('.')))) {
    const field = document.getElementById(`field-${part}`);
    if (!field) continue;
    event.preventDefault();
    field.scrollIntoView({ block: 'center' });
    field.focus();
    return;
  }
}

type SubmitButtonProps = {
  children: ReactNode;
  /** Shown while the form is being sent, e.g. 'Sending…'. */
  pending?: string;
  kind?: ButtonKind;
  small?: boolean;
  /** In a form with several buttons, the value that the pressed one sends. */
  name?: string;
  value?: string;
  disabled?: boolean;
};

/** Sends its form once: while it is being sent a second press does nothing, and the button keeps the focus. */
export function SubmitButton({
  children,
  pending = 'One moment…',
  kind = 'main',
  small,
  name,
  value,
  disabled,
}: SubmitButtonProps) {
  const status = useFormStatus();
  return (
    <button
      type="submit"
      name={name}
      value={value}
      disabled={disabled}
      aria-disabled={status.pending || undefined}
      className={buttonClasses({ kind, small })}
      onClick={(event) => {
        if (status.pending) event.preventDefault();
      }}
    >
      {status.pending ? pending : children}
    </button>
  );
}
