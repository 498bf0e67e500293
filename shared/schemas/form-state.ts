/** What a form shows after it was sent: what went wrong, field by field, and everything that had been typed. */
export type FormState = {
  readonly status: 'new' | 'failed' | 'done';
  readonly message: string;
  readonly fields: Readonly<Record<string, string>>;
  /** Several values where several boxes of one name were ticked. */
  readonly values: Readonly<Record<string, string | readonly string[]>>;
  /** What was just made and is shown this once, e.g. a link. */
  readonly shown?: Readonly<Record<string, string>>;
};

export type FormAction = (before: FormState, form: FormData) => Promise<FormState>;

export const newForm: FormState = { status: 'new', message: '', fields: {}, values: {} };

/** The text fields of a form as they were typed, without files, the framework's own (`$…`) and the secret ones. */
export function typedValues(form: FormData, secret: readonly string[] = []): FormState['values'] {
  const values: Record<string, string | string[]> = {};
  for (const name of new Set(form.keys())) {
    if (name.startsWith('$') || secret.includes(name)) continue;
    const all = form.getAll(name).filter((value) => typeof value === 'string');
    if (all.length > 0) values[name] = all.length === 1 ? all[0]! : all;
  }
  return values;
}
