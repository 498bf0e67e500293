import * as z from 'zod/mini';
import { storedFindingSchema } from './finding';
import { contactSchema, sideKindSchema, usualRangeSchema } from './measure';

/**
 * What pages read of measurements, comparisons and releases that were stored, perhaps long ago and by an older engine.
 * Only what they need, and anything else is left aside: the engine may learn to say more without making old proofs
 * unreadable.
 */
const number = z.number();
const index = z.int().check(z.gte(0));

export const storedMeasureSchema = z.object({
  engine: z.int(),
  letters: z.array(z.string()),
  pairs: z.array(
    z.object({
      index,
      tracking: number,
      offset: number,
      apparentGap: number,
      contact: contactSchema,
      sides: z.object({ left: sideKindSchema, right: sideKindSchema }),
      /** From engine 2 on. */
      total: z._default(number, 0),
      clearance: z._default(number, 0),
      usual: z._default(z.nullable(usualRangeSchema), null),
      surprise: z._default(z.nullable(number), null),
      outside: z._default(z.nullable(z.boolean()), null),
    }),
  ),
  line: z._default(z.object({ tightness: z._default(number, 0), stemGap: z._default(z.nullable(number), null) }), {
    tightness: 0,
    stemGap: null,
  }),
  findings: z.array(storedFindingSchema),
});
export type StoredMeasure = z.infer<typeof storedMeasureSchema>;

export const storedPairComparisonSchema = z.object({
  index,
  rest: number,
  tolerance: number,
  within: z.boolean(),
  reason: z.nullable(z.string()),
});

export const storedComparisonSchema = z.object({
  engine: z.int(),
  nearest: z.nullable(index),
  author: z.nullable(z.string()),
  tightness: number,
  tightnessTolerance: number,
  pairs: z.array(storedPairComparisonSchema),
  outside: z.int(),
  /** Pairs that touch in the nearest reference as well; older engines did not report them. */
  meantContacts: z._default(z.array(index), []),
  findings: z.array(storedFindingSchema),
});
export type StoredComparison = z.infer<typeof storedComparisonSchema>;
