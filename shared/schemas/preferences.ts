import * as z from 'zod/mini';

/** What a person's account remembers for them. What is not there has not happened yet. */
export const preferencesSchema = z.object({
  /** How the short guided line before the first bench ended. */
  guidedLine: z.optional(z.enum(['done', 'skipped'])),
});
export type Preferences = z.infer<typeof preferencesSchema>;
