import * as z from 'zod/mini';
import { idSchema } from './id';
import { noteEntrySchema, suggestionSchema } from './note';
import { wordedFindingSchema } from './finding';
import { storedPairComparisonSchema } from './stored-figures';

const int = z.int();

const releasedNoteSchema = z.strictObject({
  id: z.string(),
  fromPair: z.nullable(int),
  toPair: z.nullable(int),
  suggestion: suggestionSchema,
  settled: z.boolean(),
  entries: z.array(noteEntrySchema),
});

const releasedLineSchema = z.strictObject({
  specimenVersionId: z.string(),
  text: z.string(),
  notes: z.array(releasedNoteSchema),
  /** Only where the exercise lets references be seen once a round is released. */
  deviations: z.nullable(
    z.strictObject({
      author: z.nullable(z.string()),
      tightness: z.number(),
      pairs: z.array(storedPairComparisonSchema),
      /** With the sentences as they were sent; they never change afterwards. */
      findings: z.array(wordedFindingSchema),
    }),
  ),
  /** Of a line without a reference: what is beside what designers usually do, as it was sent. */
  usual: z._default(z.array(wordedFindingSchema), []),
});

const releasedMarkSchema = z.strictObject({
  criterionVersionId: z.string(),
  title: z.string(),
  weight: z.number(),
  level: z.nullable(int),
  levels: z.array(z.strictObject({ title: z.string(), description: z.string(), points: z.number() })),
});

/** What one student sees of a round: written once, never changed. A correction is a new release. */
export const releaseSnapshotSchema = z.strictObject({
  version: z.literal(1),
  proofId: z.string(),
  lines: z.array(releasedLineSchema),
  marks: z.array(releasedMarkSchema),
  total: z.strictObject({
    /** Percent before the late rule, and after; null when not every criterion was marked. */
    before: z.nullable(z.number()),
    after: z.nullable(z.number()),
    arithmetic: z.array(z.string()),
    /** What the late rule did, in words; null when the proof was in time. */
    late: z.nullable(z.string()),
  }),
});
export type ReleaseSnapshot = z.infer<typeof releaseSnapshotSchema>;
export type ReleasedLine = z.infer<typeof releasedLineSchema>;
export type ReleasedNote = z.infer<typeof releasedNoteSchema>;

/** Releases to those listed. `seen` is what each preview showed (its digest), so that nothing goes out unseen. */
export const releaseRoundSchema = z.strictObject({
  exerciseId: idSchema,
  roundNumber: int.check(z.gte(1)),
  to: z
    .array(
      z.strictObject({
        proofId: idSchema,
        seen: z.string().check(z.regex(/^[0-9a-f]{64}$/, 'Open the preview first; what it shows is what goes out.')),
      }),
    )
    .check(z.minLength(1, 'Choose at least one student to release to.'), z.maxLength(5000)),
});
