import * as z from 'zod/mini';
import { roundNumberSchema } from './critique';
import { idSchema } from './note';

/** The class page: a round (the latest with proofs, where none is named) and a page of its students. */
export const showClassInput = z.strictObject({
  exerciseId: idSchema,
  round: z.nullable(roundNumberSchema),
  page: z._default(z.coerce.number('Pages have numbers.').check(z.int(), z.gte(1), z.lte(10_000)), 1),
});
