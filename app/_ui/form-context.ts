'use client';
import { createContext, useContext } from 'react';
import { newForm, type FormState } from '@/shared/schemas/form-state';

/** The result of the last attempt of the surrounding form. Fields read their error and their typed value from it. */
export const FormContext = createContext<FormState>(newForm);

/** A field's error and what was last typed or ticked (undefined when the form is new). */
export function useFormField(name: string): {
  error: string | undefined;
  typed: string | undefined;
  ticked: readonly string[] | undefined;
} {
  const state = useContext(FormContext);
  const values = state.status === 'failed' ? [state.values[name] ?? ''].flat() : undefined;
  return { error: state.fields[name], typed: values?.[0], ticked: values };
}
