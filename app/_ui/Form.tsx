'use client';
import { useActionState, type ReactNode } from 'react';
import { newForm, type FormAction, type FormState } from '@/shared/schemas/form-state';
import { FormContext } from './form-context';
import { FormError } from './FormError';
import { classes } from './classes';

type Props = {
  action: FormAction;
  children: ReactNode;
  /** Names the form for readers that cannot see it; needed when a page has several. */
  label?: string;
  inline?: boolean;
  /** A state to begin with, e.g. after a redirect. */
  initial?: FormState;
};

/**
 * A form over a server action. It works before and without JavaScript; what was typed comes back with the errors.
 * Checks are made on the server, once, so the browser's own bubbles are off.
 */
export function Form({ action, children, label, inline, initial = newForm }: Props) {
  const [state, dispatch] = useActionState(action, initial);
  return (
    <FormContext value={state}>
      <form action={dispatch} className={classes('form', inline && 'form-inline')} aria-label={label} noValidate>
        <FormError state={state} />
        {children}
      </form>
    </FormContext>
  );
}
