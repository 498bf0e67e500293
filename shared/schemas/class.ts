import * as z from 'zod/mini';
import { roundNumberSchema } from './critique';
import { idSchema } from './id';
import { pageNumberSchema } from './page';

/** The class page: a round (the latest with proofs, where none is named) and a page of its students. */
export const getClassInput = z.strictObject({
  exerciseId: idSchema,
  round: z.nullable(roundNumberSchema),
  page: pageNumberSchema,
});

/** The map of a round: one line by its specimen version, or all of them. */
export const mapInput = z.strictObject({
  exerciseId: idSchema,
  roundNumber: roundNumberSchema,
  line: z.nullable(idSchema),
});

/**
 * The map’s page: as input of the class page, a line (the first, where none is named; `all` for all), and whether the
 * numbers are asked for as a table, a page at a time.
 */
export const getMapPageInput = z.strictObject({
  exerciseId: idSchema,
  round: z.nullable(roundNumberSchema),
  line: z.nullable(idSchema),
  tablePage: z.nullable(z.coerce.number('Pages have numbers.').check(z.int(), z.gte(1), z.lte(10_000))),
});

/** One line of a round, by its specimen version. */
export const pairTotalsInput = z.strictObject({ exerciseId: idSchema, roundNumber: roundNumberSchema, line: idSchema });
