import * as z from 'zod/mini';

/** A whole number of thousandths of an em, ±2000. */
export const offsetSchema = z.int().check(z.gte(-2000), z.lte(2000));

/** A spacing: tracking (added to every gap alike) and one offset per pair, all in 1/1000 em over the built-in value. */
export const spacingSchema = z.strictObject({
  tracking: offsetSchema,
  offsets: z.array(offsetSchema).check(z.maxLength(199)),
});

export type Spacing = z.infer<typeof spacingSchema>;

/** The pairs first..last of a line, both included. A single pair has first = last. */
export type Run = { readonly first: number; readonly last: number };

/** A size as the exercise gives it: px on screens, pt on paper (1 pt = 1/72 in, 1 px = 1/96 in, CSS Values 4 §6.2). */
export const sizeSchema = z.strictObject({ value: z.number().check(z.gt(0), z.lte(2000)), unit: z.enum(['px', 'pt']) });
export type Size = z.infer<typeof sizeSchema>;

export const groundSchema = z.enum(['light', 'dark']);
export type Ground = z.infer<typeof groundSchema>;
