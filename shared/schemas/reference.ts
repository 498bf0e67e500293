import * as z from 'zod/mini';
import { saveRequestSchema } from './draft';
import { idSchema } from './id';

/**
 * One author can set a line more than once: slot 1 is the reference, slot 2 the second take that shows how well it can
 * be repeated.
 */
const slotSchema = z.int().check(z.gte(1), z.lte(9));

/** 1/1000 em either side, or null: the default of the exercise. */
export const toleranceSchema = z.nullable(
  z
    .int('A tolerance is a whole number of thousandths of an em.')
    .check(z.gte(0, 'A tolerance is at least 0.'), z.lte(500, 'A tolerance is at most 500.')),
);
export const reasonSchema = z.nullable(
  z.string().check(z.trim(), z.normalize(), z.maxLength(600, 'A reason has at most 600 characters.')),
);

/** What the bench sends, and where to. A reason of '' is none. */
export const saveReferenceInput = z.extend(saveRequestSchema, { specimenVersionId: idSchema, slot: slotSchema });

export const referenceBenchInput = z.strictObject({ specimenId: idSchema, slot: slotSchema });
export const referenceOnly = z.strictObject({ referenceId: idSchema });
export const carryReferenceInput = z.strictObject({
  referenceId: idSchema,
  specimenIds: z.array(idSchema).check(z.minLength(1, 'Choose at least one line to carry it to.'), z.maxLength(200)),
  /** Replace a reference that you already have there? */
  replace: z.boolean(),
});
