import { AppError } from '@/lib/access/errors';
import { logError } from '@/lib/log';

/** The one map from errors to responses. An unknown error is logged and told without its text. */
export function errorResponse(error: unknown): Response {
  const known = asAppError(error);
  const headers: Record<string, string> = { 'cache-control': 'no-store' };
  if (known.retryAfterSeconds !== null) headers['retry-after'] = String(known.retryAfterSeconds);
  const { code, said, fields, body } = known;
  return Response.json(
    { error: { code, said, fields, ...(body === null ? {} : { body }) } },
    { status: known.status, headers },
  );
}

/** A known error as it is; anything else becomes INTERNAL, with its cause in the log only. */
export function asAppError(error: unknown): AppError {
  if (error instanceof AppError) return error;
  logError(error);
  return new AppError(
    'INTERNAL',
    'Something failed on our side and has been written to the log. What you sent was not changed; please try again in a minute.',
    { cause: error },
  );
}
