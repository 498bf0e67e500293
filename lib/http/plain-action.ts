import 'server-only';
import type { $ZodType } from 'zod/v4/core';
import type { Operation } from '@/lib/access/operation';
import { currentCaller } from './caller';
import { asAppError } from './error-response';

/** What a plain action answers: nothing, or what went wrong in words. */
export type PlainAnswer = { failed: string | null };

/** A server action called with arguments instead of a form: one operation, and only a sentence comes back. */
export function plainAction<Arguments extends unknown[], Result, Schema extends $ZodType>(
  operation: Operation<Result, Schema>,
  read: (...given: Arguments) => unknown,
) {
  return async (...given: Arguments): Promise<PlainAnswer> => {
    try {
      await operation(await currentCaller(), read(...given));
      return { failed: null };
    } catch (error) {
      return { failed: asAppError(error).userMessage };
    }
  };
}
