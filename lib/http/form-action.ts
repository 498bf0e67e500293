import 'server-only';
import { refresh } from 'next/cache';
import { redirect } from 'next/navigation';
import type { $ZodType } from 'zod/v4/core';
import { AppError } from '@/lib/access/errors';
import { typedValues, type FormState } from '@/shared/schemas/form-state';
import type { Operation } from '@/lib/access/operation';
import { currentCaller } from './caller';
import { asAppError } from './error-response';

type Options<Result> = {
  /** The operation's input from the form's fields. */
  read: (form: FormData) => unknown;
  /** Where to go when done; none stays on the page and says `done`. */
  then?: (result: Result, form: FormData) => string | Promise<string>;
  done?: (result: Result) => string;
  /** What the page shows once, under names of its own (a link that was just made). */
  show?: (result: Result) => Record<string, string>;
  /** Names of fields whose values are not given back (passwords). */
  secret?: readonly string[];
};

/** A server action for a form: reads the fields, calls one operation, and gives back what was typed if it fails. */
export function formAction<Result, Schema extends $ZodType>(
  operation: Operation<Result, Schema>,
  options: Options<Result>,
) {
  return async (_before: FormState, form: FormData): Promise<FormState> => {
    let result: Result;
    try {
      result = await operation(await currentCaller(), options.read(form));
    } catch (error) {
      const known = asAppError(error);
      // What another person saved meanwhile must be on the page, or a second try would meet the same conflict.
      if (known.code === 'CONFLICT') refresh();
      return failed(known, form, options.secret ?? []);
    }
    if (options.then) redirect(await options.then(result, form));
    refresh();
    return {
      status: 'done',
      message: options.done?.(result) ?? 'Saved.',
      fields: {},
      values: {},
      shown: options.show?.(result) ?? {},
    };
  };
}

function failed(error: AppError, form: FormData, secret: readonly string[]): FormState {
  return { status: 'failed', message: error.userMessage, fields: error.fields, values: typedValues(form, secret) };
}
