import * as z from 'zod/mini';
import { idSchema, storableText } from './note';

/** Sets the level that counts where two markers differ, or takes it back (`level` null). */
export const settleMarkSchema = z.strictObject({
  proof: idSchema,
  criterionVersionId: idSchema,
  /** Index into the criterion's levels, lowest first. */
  level: z.nullable(z.int('Choose the level that counts.').check(z.gte(0, 'Levels are counted from 0.'))),
  /** The version that was on screen, −1 before anything was settled; an older one changes nothing. */
  version: z.int().check(z.gte(-1)),
  why: z
    .string()
    .check(
      storableText,
      z.trim(),
      z.minLength(1, 'Say in a few words why this level counts; the reason is kept with the mark.'),
      z.maxLength(500, 'A reason holds at most 500 characters; please shorten it.'),
    ),
});
