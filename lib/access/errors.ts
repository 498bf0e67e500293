import type { $ZodError } from 'zod/v4/core';

/** Everything that can go wrong for a caller. Each code has one status, in one table. */
const statusOf = {
  INVALID: 400,
  SIGNED_OUT: 401,
  /** Not there and not yours are the same answer, byte for byte. */
  NOT_FOUND: 404,
  CONFLICT: 409,
  EXPIRED: 410,
  TOO_LARGE: 413,
  TOO_MANY: 429,
  INTERNAL: 500,
  UNAVAILABLE: 503,
} as const;

export type ErrorCode = keyof typeof statusOf;

/** The text for the person, field by field where a form is concerned. */
type FieldErrors = Readonly<Record<string, string>>;

type Options = { fields?: FieldErrors; retryAfterSeconds?: number; body?: unknown; cause?: unknown };

/**
 * The one error that crosses from an operation to a page or route.
 * `userMessage` is for the person and quotes what was wrong and what to do; `cause` is for the log and never leaves the
 * server.
 */
export class AppError extends Error {
  readonly code: ErrorCode;
  readonly userMessage: string;
  readonly fields: FieldErrors;
  readonly retryAfterSeconds: number | null;
  /** Further facts for the caller of a route, e.g. the other version in a conflict. */
  readonly body: unknown;

  constructor(code: ErrorCode, userMessage: string, options: Options = {}) {
    super(`${code}: ${userMessage}`, { cause: options.cause });
    this.name = 'AppError';
    this.code = code;
    this.userMessage = userMessage;
    this.fields = options.fields ?? {};
    this.retryAfterSeconds = options.retryAfterSeconds ?? null;
    this.body = options.body ?? null;
  }

  get status(): number {
    return statusOf[this.code];
  }
}

/** One text for everything that is absent or another person's. */
export const notFound = (): AppError =>
  new AppError(
    'NOT_FOUND',
    'Page not found. The address may be mistyped, or it may belong to a course that you are not in.',
  );

export const signedOut = (): AppError =>
  new AppError('SIGNED_OUT', 'Please sign in first; nothing that you typed is lost.');

/** For the second of two who change the same thing: neither loses anything. */
export const changedMeanwhile = (what: string): AppError =>
  new AppError(
    'CONFLICT',
    `Another person changed ${what} after you opened this page, so your change was not saved. What you typed is still here, with the saved version beside it. Save again to replace it with yours.`,
  );

/** One text per field, under its path (`rounds.0.due`), each quoting what was given. */
export function fieldErrors(error: $ZodError, input: unknown): FieldErrors {
  const fields: Record<string, string> = {};
  for (const issue of error.issues) {
    const path = issue.path.map(String).join('.') || 'form';
    fields[path] ??= `${issue.message}${secret.test(path) ? '' : quoted(valueAt(input, issue.path))}`;
  }
  return fields;
}

/** What is typed here is never written out again. */
const secret = /password|token/i;

export const fieldErrorsText = (fields: FieldErrors): string =>
  Object.entries(fields)
    .map(([path, userMessage]) => (path === 'form' ? userMessage : `${path}: ${userMessage}`))
    .join(' ');

const valueAt = (input: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (value, key) =>
      value !== null && typeof value === 'object' ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    input,
  );

function quoted(value: unknown): string {
  if (value === undefined || value === null || value === '') return '';
  if (typeof value === 'object') return '';
  const text = String(value);
  return ` (given: “${text.length > 60 ? `${text.slice(0, 57)}…` : text}”)`;
}
