import * as z from 'zod/mini';

/**
 * `more even` and `gap off` were asked about lines that a measure had made even; sittings of them are kept and no
 * longer begun.
 */
const practiceTaskSchema = z.enum(['which line', 'which gap', 'more even', 'gap off']);
export type PracticeTask = z.infer<typeof practiceTaskSchema>;

/** Looks in which nothing was moved, and how often a move was seen in them; null in sittings without such looks. */
const unmovedLooksSchema = z.nullable(
  z.strictObject({ shown: z.int().check(z.gte(0), z.lte(1000)), seen: z.int().check(z.gte(0), z.lte(1000)) }),
);

/** Gaps by the sides that look into them (shared/practice/moved-gap.ts). */
export const practiceKindSchema = z.enum(['any', 'straight', 'round', 'open']);
export type PracticeKind = z.infer<typeof practiceKindSchema>;

/** No move that is shown is larger, 1/1000 em. */
const level = z.number().check(z.gt(0), z.lte(2000));

/** One finished sitting: how small a move was seen. */
export const practiceResultSchema = z.strictObject({
  /** Made in the browser: sent again, it is the same result. */
  requestKey: z
    .string()
    .check(z.minLength(8), z.maxLength(80), z.regex(/^[\w:.-]+$/, 'This is not a key that the practice makes.')),
  /** When the sitting ended, by the clock of the device. */
  at: z.iso.datetime(),
  task: practiceTaskSchema,
  kind: practiceKindSchema,
  /** Size in px at which the lines were shown. */
  size: z.number().check(z.gte(4), z.lte(2000)),
  /** Smallest move seen, 1/1000 em. */
  fault: level,
  /** Looks taken; 0 where an older result does not say. */
  trials: z.int().check(z.gte(0), z.lte(1000)),
  /** Levels at which the staircase turned, 1/1000 em. */
  turns: z.array(level).check(z.maxLength(100)),
  unmoved: z._default(unmovedLooksSchema, null),
});
export type PracticeResult = z.infer<typeof practiceResultSchema>;

export const savePracticeResultsInput = z.strictObject({
  results: z.array(practiceResultSchema).check(z.minLength(1), z.maxLength(100)),
});

/** The payload column. */
export const practicePayloadSchema = z.object({
  task: practiceTaskSchema,
  trials: z._default(z.int(), 0),
  turns: z._default(z.array(z.number()), []),
  unmoved: z._default(unmovedLooksSchema, null),
});
