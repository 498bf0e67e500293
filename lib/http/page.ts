import 'server-only';
import { notFound, redirect } from 'next/navigation';
import { headers } from 'next/headers';
import type { $ZodType } from 'zod/v4/core';
import { AppError } from '@/lib/access/errors';
import type { Operation } from '@/lib/access/operation';
import { currentCaller } from './caller';

/** Calls an operation for a page: signed-out people go to sign-in and return; what is not theirs is not found. */
export async function forPage<Result, Schema extends $ZodType>(
  operation: Operation<Result, Schema>,
  input: unknown = {},
): Promise<Result> {
  try {
    return await operation(await currentCaller(), input);
  } catch (error) {
    if (!(error instanceof AppError)) throw error;
    if (error.code === 'SIGNED_OUT')
      redirect(`/sign-in?next=${encodeURIComponent((await headers()).get('x-path') ?? '/')}`);
    // A mistyped id in an address is simply nothing.
    if (error.code === 'TOO_MANY') redirect(`/too-many?wait=${error.retryAfterSeconds ?? 60}`);
    if (error.code === 'NOT_FOUND' || error.code === 'INVALID') notFound();
    throw error;
  }
}

/**
 * The same for the title of a page, which never decides what is answered: null where the page itself will be refused, so
 * that the title of a refusal says nothing of what there is.
 */
export async function forTitle<Result, Schema extends $ZodType>(
  operation: Operation<Result, Schema>,
  input: unknown = {},
): Promise<Result | null> {
  try {
    return await operation(await currentCaller(), input);
  } catch (error) {
    if (error instanceof AppError) return null;
    throw error;
  }
}
