import * as z from 'zod/mini';
import { idSchema } from './id';

/**
 * What a criterion is based on. `judgement`: what the marker sees. `evenness`, `contact`: the measure may propose a
 * figure. `distance`: nearness to the references, which is never the only criterion of an exercise.
 */
export const criterionBasisSchema = z.enum(['judgement', 'evenness', 'contact', 'distance']);
export type CriterionBasis = z.infer<typeof criterionBasisSchema>;

/** One step, lowest first. Points are a share of the criterion's weight, in percent. */
const levelSchema = z.strictObject({
  title: z
    .string()
    .check(
      z.trim(),
      z.normalize(),
      z.minLength(1, 'Give each level a name.'),
      z.maxLength(60, 'A level’s name has at most 60 characters.'),
    ),
  description: z
    .string()
    .check(z.trim(), z.normalize(), z.maxLength(600, 'A level’s description has at most 600 characters.')),
  points: z
    .number('Give each level its percent as a number.')
    .check(z.gte(0, 'A level is worth at least 0%.'), z.lte(100, 'A level is worth at most 100%.')),
});
export type Level = z.infer<typeof levelSchema>;

export const levelsSchema = z
  .array(levelSchema)
  .check(
    z.minLength(2, 'A criterion needs at least two levels.'),
    z.maxLength(8, 'A criterion has at most eight levels.'),
  );

const typedCriterion = {
  title: z
    .string()
    .check(
      z.trim(),
      z.normalize(),
      z.minLength(1, 'Give the criterion a name.'),
      z.maxLength(80, 'A criterion’s name has at most 80 characters.'),
    ),
  description: z
    .string()
    .check(z.trim(), z.normalize(), z.maxLength(1000, 'A description has at most 1000 characters.')),
  basis: criterionBasisSchema,
  weight: z
    .number('Give the weight as a number.')
    .check(z.gt(0, 'A weight is above 0.'), z.lte(1000, 'A weight is at most 1000.')),
  levels: levelsSchema,
};

export const addCriterionInput = z.strictObject({ exerciseId: idSchema, ...typedCriterion });
/** `number` is the version that was on the screen. */
export const changeCriterionInput = z.strictObject({
  criterionId: idSchema,
  number: z.int().check(z.gte(1)),
  ...typedCriterion,
});
export const criterionOnly = z.strictObject({ criterionId: idSchema });
export type TypedCriterion = Omit<z.infer<typeof addCriterionInput>, 'exerciseId'>;
