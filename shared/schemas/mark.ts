import * as z from 'zod/mini';
import { idSchema } from './id';
import { storableText } from './note';

/** Sets the level of one criterion in one marker's work on a proof, or takes it back (`level` null). */
export const giveMarkSchema = z.strictObject({
  proofId: idSchema,
  criterionVersionId: idSchema,
  /** Index into the criterion's levels, lowest first. */
  level: z.nullable(z.int().check(z.gte(0, 'Levels are counted from 0.'))),
  /** The version that was on screen, −1 before the first mark; an older one changes nothing. */
  version: z.int().check(z.gte(-1)),
  /** Wanted when a level that was given is changed. */
  why: z
    .string()
    .check(storableText, z.trim(), z.maxLength(500, 'A reason holds at most 500 characters; please shorten it.')),
});

/** A mark as the marker's page shows it. */
export type MarkView = { criterionVersionId: string; level: number | null; version: number };

/** One change of a mark, by whom and why. */
export type MarkEventView = {
  criterionVersionId: string;
  who: string | null;
  why: string;
  before: number | null;
  after: number | null;
  at: string;
};

const percent = z
  .int('Give the share as a whole number of percent.')
  .check(
    z.gte(1, 'A share is at least 1%.'),
    z.lte(99, 'A share is at most 99%; choose “every proof” for all of them.'),
  );
const which = z.enum(
  ['none', 'share', 'all'],
  'Choose whether a second marker looks at no proof, at a share of them, or at every one.',
);

/** Which proofs of a round a second marker looks at: none, a share of them, all. `percent` counts for a share only. */
export const secondMarkingSchema = z.object({ which: z._default(which, 'none'), percent: z._default(percent, 20) });
export type SecondMarking = z.infer<typeof secondMarkingSchema>;

export const setSecondMarkingInput = z.strictObject({
  roundId: idSchema,
  version: z.int().check(z.gte(0)),
  which,
  percent,
});

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
