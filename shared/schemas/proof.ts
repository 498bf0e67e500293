import * as z from 'zod/mini';

const id = z.string().check(z.minLength(1), z.maxLength(64));

/** What a student sends. Sent again with the same request key it is the same proof. */
export const sendProofSchema = z.strictObject({
  exerciseId: id,
  requestKey: z.string().check(z.minLength(8), z.maxLength(64), z.regex(/^[A-Za-z0-9-]+$/)),
  /** One sentence: why the line is set as it is. */
  reasoning: z
    .string()
    .check(
      z.normalize(),
      z.trim(),
      z.minLength(1, 'Say in one sentence what you looked for; the marker reads it first.'),
      z.maxLength(600, 'One sentence is enough: at most 600 characters.'),
    ),
  /** Browser zoom when it was sent, 1 = none. */
  zoom: z._default(z.number().check(z.gte(0.1), z.lte(10)), 1),
  /**
   * Versions of the drafts as the sender saw them, by specimen version; a draft that is at another version now is not
   * sent unseen.
   */
  drafts: z.optional(z.record(id, z.int().check(z.gte(0)))),
});
export type SendProof = z.infer<typeof sendProofSchema>;
