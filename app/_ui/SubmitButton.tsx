'use client';
import type { ReactNode } from 'react';
import { useFormStatus } from 'react-dom';
import { buttonClasses, type ButtonKind } from './Button';

type Props = {
  children: ReactNode;
  /** Said while the form is on its way, e.g. 'Sending…'. */
  pending?: string;
  kind?: ButtonKind;
  small?: boolean;
  /** When a form has several buttons, the chosen one sends this. */
  name?: string;
  value?: string;
  disabled?: boolean;
};

/** Sends its form once: while it is on its way a second press does nothing, and it keeps the focus. */
export function SubmitButton({
  children,
  pending = 'One moment…',
  kind = 'main',
  small,
  name,
  value,
  disabled,
}: Props) {
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
