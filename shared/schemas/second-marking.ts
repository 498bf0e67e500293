import * as z from 'zod/mini';
import { idSchema } from './exercise';

const percent = z
  .int('Give the share as a whole number of percent.')
  .check(
    z.gte(1, 'A share is at least 1 %.'),
    z.lte(99, 'A share is at most 99 %; choose “every proof” for all of them.'),
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
