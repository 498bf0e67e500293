import * as z from 'zod/mini';
import { idSchema } from './id';
import { pageNumberSchema } from './page';

export const roundNumberSchema = z.coerce
  .number('Rounds have numbers.')
  .check(z.int(), z.gte(1, 'Rounds are counted from 1.'), z.lte(1000));

/** One round of an exercise. */
export const roundByNumber = z.strictObject({ exerciseId: idSchema, roundNumber: roundNumberSchema });

/** The part of the queue that is gone through: a section's, or all of it. */
export const sectionSchema = z._default(z.nullable(idSchema), null);

/** One line of a proof; the proof by its id or by its alias. */
export const proofLineInput = z.strictObject({ proof: idSchema, specimenId: idSchema, section: sectionSchema });
export const proofOnly = z.strictObject({ proof: idSchema });

/**
 * One specimen across a round: a page of the proofs that count, all of them or those that share a fault (as `faultKey`
 * names it).
 */
export const specimenAcrossInput = z.strictObject({
  ...roundByNumber.shape,
  specimenId: idSchema,
  fault: z.nullable(z.string().check(z.maxLength(40))),
  page: pageNumberSchema,
});
