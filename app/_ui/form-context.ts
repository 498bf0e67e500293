'use client';
import { createContext, useContext } from 'react';
import { freshForm, type FormState } from '@/shared/forms/form-state';

/** What the last attempt of the surrounding form said. Fields read their error and their typed value from it. */
export const FormContext = createContext<FormState>(freshForm);

/** A field's error and what was typed into it last (undefined when the form is fresh). */
export function useFormField(name: string): { error: string | undefined; typed: string | string[] | undefined } {
  const state = useContext(FormContext);
  return { error: state.errors[name], typed: state.outcome === 'failed' ? (state.values[name] ?? '') : undefined };
}
