import * as z from 'zod/mini';
import { roundNumberSchema } from './critique';
import { idSchema } from './note';
import { pageNumberSchema } from './page';

/** The class page: a round (the latest with proofs, where none is named) and a page of its students. */
export const showClassInput = z.strictObject({
  exerciseId: idSchema,
  round: z.nullable(roundNumberSchema),
  page: pageNumberSchema,
});
