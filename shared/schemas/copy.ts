import * as z from 'zod/mini';
import { courseTitleSchema } from './course';

/** What becomes of the dates in a copy: left empty, or moved by whole days (7 a week). */
export const copyDatesSchema = {
  dates: z.enum(['empty', 'moved'], 'Choose what becomes of the dates.'),
  days: z.coerce
    .number('Give the days as a whole number.')
    .check(
      z.int('Give the days as a whole number.'),
      z.gte(-3660, 'At most ten years back.'),
      z.lte(3660, 'At most ten years on.'),
    ),
};

export const copyTitleSchema = courseTitleSchema;
