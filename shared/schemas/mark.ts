import * as z from 'zod/mini';
import { idSchema, storableText } from './note';

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
export type GiveMark = z.infer<typeof giveMarkSchema>;

/** A mark as it stands on the marker's page. */
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
