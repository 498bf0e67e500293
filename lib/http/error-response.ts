import { AppError } from '@/lib/access/errors';
import { logError } from '@/lib/log';

/** The one map from errors to responses. An unknown error is logged, and its text is not sent. */
export function errorResponse(error: unknown): Response {
  const known = asAppError(error);
  const headers: Record<string, string> = { 'cache-control': 'no-store' };
  if (known.retryAfterSeconds !== null) headers['retry-after'] = String(known.retryAfterSeconds);
  const { code, userMessage, fields, body } = known;
  return Response.json(
    { error: { code, message: userMessage, fields, ...(body === null ? {} : { body }) } },
    { status: known.status, headers },
  );
}

/** A known error as it is; anything else becomes INTERNAL, with its cause in the log only. */
export function asAppError(error: unknown): AppError {
  if (error instanceof AppError) return error;
  if (isTooLarge(error))
    return new AppError('INVALID', 'A number in what was sent is larger than can be stored. Nothing was changed.', {
      cause: error,
    });
  logError(error);
  return new AppError(
    'INTERNAL',
    'Something failed on our side and has been written to the log. What you sent was not changed; please try again in a minute.',
    { cause: error },
  );
}

/**
 * Prisma's codes for values out of the range of a column (Prisma error reference): P2020, and P2033 for integers beyond
 * 64 bits.
 */
const isTooLarge = (error: unknown): boolean =>
  ['P2020', 'P2033'].includes(String((error as { code?: unknown } | null)?.code)) ||
  (error instanceof Error && /Unable to fit (integer )?value|out of range for type/i.test(error.message));
