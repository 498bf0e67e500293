/**
 * What a form action hands back. `values` are the fields as they were typed, so that nothing typed is lost
 * when something fails; `errors` name a field and say what to do about it.
 */
export type FormState = {
  outcome: 'fresh' | 'failed' | 'done';
  /** One sentence for the whole form. */
  message?: string;
  errors: Record<string, string>;
  values: Record<string, string | string[]>;
};

export type FormAction = (previous: FormState, data: FormData) => Promise<FormState>;

export const freshForm: FormState = { outcome: 'fresh', errors: {}, values: {} };

/** A failed attempt: keeps what was typed and says, per field, what to do. */
export function failedForm(data: FormData, errors: Record<string, string>, message?: string): FormState {
  return { outcome: 'failed', errors, values: typedValues(data), ...(message === undefined ? {} : { message }) };
}

/** A finished attempt; the fields are empty again. */
export function doneForm(message?: string): FormState {
  return { outcome: 'done', errors: {}, values: {}, ...(message === undefined ? {} : { message }) };
}

/** The text fields of a form, without files, passwords and the framework's own (`$…`) fields. */
export function typedValues(data: FormData): FormState['values'] {
  const values: FormState['values'] = {};
  for (const name of new Set(data.keys())) {
    if (name.startsWith('$') || /password/i.test(name)) continue;
    const all = data.getAll(name).filter((value): value is string => typeof value === 'string');
    if (all.length > 0) values[name] = all.length === 1 ? all[0]! : all;
  }
  return values;
}
