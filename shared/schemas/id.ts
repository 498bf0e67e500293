import * as z from 'zod/mini';

/** An id as the server makes them, or an alias that takes the place of one. */
export const idSchema = z
  .string()
  .check(
    z.minLength(1, 'An id is missing.'),
    z.maxLength(64, 'This is not the id of anything.'),
    z.regex(/^[A-Za-z0-9_-]+$/, 'This is not the id of anything.'),
  );
