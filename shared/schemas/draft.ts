import * as z from 'zod/mini';
import { offsetSchema, spacingSchema } from './spacing';

/** Longest reason, in UTF-16 units. */
export const REASON_LIMIT = 500;

/** One tolerance per pair, in 1/1000 em; null = the exercise's own. */
const tolerancesSchema = z.array(z.nullable(offsetSchema.check(z.gte(0)))).check(z.maxLength(199));
/** One reason per pair; '' = none. */
const reasonsSchema = z.array(z.string().check(z.maxLength(REASON_LIMIT))).check(z.maxLength(199));

/**
 * Body of the PUT that the bench sends to its `save` address. (draftId, clientId, seq) identifies a change: sent twice,
 * it is stored once and answered the same. `tolerances` and `reasons` are sent only from a bench that sets a reference.
 */
export const saveRequestSchema = z.strictObject({
  draftId: z.string().check(z.minLength(1), z.maxLength(100)),
  /** The version this change was made on; another one on the server is a conflict. */
  baseVersion: z.int().check(z.gte(0)),
  /** One open bench; made anew each time it is opened. */
  clientId: z.string().check(z.minLength(1), z.maxLength(64)),
  /** Counts up within a client. */
  seq: z.int().check(z.gte(1)),
  spacing: spacingSchema,
  tolerances: z.optional(tolerancesSchema),
  reasons: z.optional(reasonsSchema),
});
export type SaveRequest = z.infer<typeof saveRequestSchema>;

const stored = { spacing: spacingSchema, tolerances: z.optional(tolerancesSchema), reasons: z.optional(reasonsSchema) };

/** Answer: 200 with the new version, or 409 with what the server has instead. */
export const saveAnswerSchema = z.union([
  z.object({ version: z.int().check(z.gte(0)) }),
  z.object({ conflict: z.object({ version: z.int().check(z.gte(0)), ...stored }) }),
]);
export type SaveAnswer = z.infer<typeof saveAnswerSchema>;
