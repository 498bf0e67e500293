import type { $ZodError } from 'zod/v4/core';
import type { FieldErrors } from './errors';

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

export const sayFieldErrors = (fields: FieldErrors): string =>
  Object.entries(fields)
    .map(([path, said]) => (path === 'form' ? said : `${path}: ${said}`))
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
