/** What a form shows after it was sent: what went wrong, field by field, and everything that had been typed. */
export type FormState = {
  readonly status: 'new' | 'failed' | 'done';
  readonly said: string;
  readonly fields: Readonly<Record<string, string>>;
  readonly values: Readonly<Record<string, string>>;
};

export const newForm: FormState = { status: 'new', said: '', fields: {}, values: {} };
