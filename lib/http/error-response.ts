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

/**
 * The database is away, or lets nobody in: Prisma's codes for a server that can't be reached or closed the connection
 * (P1001, P1002, P1017) and for no free connection (P2024, P2028); what the driver and the operating system say; a
 * full disk.
 */
function isAway(error: unknown): boolean {
  for (let one = error, depth = 0; one && typeof one === 'object' && depth < 6; depth += 1) {
    const { code, kind, message, cause, meta } = one as Record<string, unknown>;
    if (['P1001', 'P1002', 'P1017', 'P2024', 'P2028'].includes(String(code))) return true;
    if (/^(ECONNREFUSED|ECONNRESET|ENOTFOUND|ETIMEDOUT|EPIPE|57P0[123]|53300|SQLITE_FULL)$/.test(String(code)))
      return true;
    if (/^(DatabaseNotReachable|ConnectionClosed|TooManyConnections)$/.test(String(kind))) return true;
    if (/Can't reach database server|timeout exceeded when trying to connect|disk is full/i.test(String(message)))
      return true;
    one = cause ?? (meta as { driverAdapterError?: unknown } | undefined)?.driverAdapterError;
  }
  return false;
}

/** A known error as it is; anything else becomes INTERNAL, with its cause in the log only. */
export function asAppError(error: unknown): AppError {
  if (error instanceof AppError) return error;
  if (isTooLarge(error))
    return new AppError('INVALID', 'A number in what was sent is larger than can be stored. Nothing was changed.', {
      cause: error,
    });
  logError(error);
  if (isAway(error))
    return new AppError(
      'UNAVAILABLE',
      'The database can’t be reached at the moment, so nothing was changed. What you typed is still here; please try again in a minute.',
      { cause: error, retryAfterSeconds: 30 },
    );
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
