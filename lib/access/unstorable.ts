import { AppError } from './errors';

/**
 * Refuses what no database here can store, at any depth of the input: the character NUL, which PostgreSQL lacks, and
 * numbers that are not finite or too large to be exact. Checked first, so that operations need not.
 * @throws AppError INVALID
 */
export function refuseUnstorable(input: unknown): void {
  // A list of what is still to be looked at: an input can be nested deeper than calls can.
  const left = [input];
  for (let value = left.pop(); value !== undefined || left.length > 0; value = left.pop()) {
    if (typeof value === 'string' && value.includes('\0'))
      throw new AppError('INVALID', 'What was sent contains the character NUL. Remove it.');
    if (typeof value === 'number' && !(Math.abs(value) <= Number.MAX_SAFE_INTEGER))
      throw new AppError('INVALID', `What was sent contains the number ${value}, which is too large.`);
    if (Array.isArray(value)) for (const one of value) left.push(one);
    else if (typeof value === 'object' && value !== null && !(value instanceof Date))
      for (const entry of Object.entries(value)) left.push(...entry);
  }
}
