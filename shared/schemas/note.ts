import * as z from 'zod/mini';
import { idSchema } from './id';
import { offsetSchema } from './spacing';

/**
 * A note is critique pinned to the pairs `fromPair`..`toPair` (both included, so one pair when they are equal),
 * or to the whole line when both are null.
 */

const pairIndex = z.int().check(z.gte(0, 'Pairs are counted from 0.'), z.lte(198, 'A line has at most 199 pairs.'));

/** Half a surrogate pair and U+0000 cannot be stored as text; a person never means them. */
export const storableText = z.overwrite<string>((text) =>
  text.replace(/[\uD800-\uDFFF]/gu, '\uFFFD').replaceAll('\0', ''),
);

/** The text of a note: not empty once trimmed, and short enough for a margin. */
const bodySchema = z
  .string()
  .check(
    storableText,
    z.normalize(),
    z.trim(),
    z.minLength(1, 'Please write something, or choose a stock note.'),
    z.maxLength(2000, 'A note holds at most 2,000 characters; please shorten it or write two.'),
  );

/** Suggested offsets (1/1000 em, over the built-in value) for the pairs fromPair..toPair. */
export const suggestionSchema = z.nullable(z.array(offsetSchema).check(z.minLength(1), z.maxLength(199)));

const target = {
  fromPair: z.nullable(pairIndex),
  toPair: z.nullable(pairIndex),
};

export const writeNoteSchema = z.strictObject({
  proofId: idSchema,
  specimenVersionId: idSchema,
  /** Made in the browser: sending again with the same key is the same note. */
  requestKey: z
    .string()
    .check(z.minLength(8, 'The key of this note is too short to be told from others.'), z.maxLength(64)),
  ...target,
  body: bodySchema,
  suggestion: suggestionSchema,
});
export type WriteNote = z.infer<typeof writeNoteSchema>;

export const editNoteSchema = z.strictObject({
  noteId: idSchema,
  /** The version that was on screen; an older one changes nothing and is refused. */
  version: z.int().check(z.gte(0)),
  body: bodySchema,
  suggestion: suggestionSchema,
});

export const noteStateSchema = z.strictObject({
  noteId: idSchema,
  version: z.int().check(z.gte(0)),
  to: z.enum(['open', 'settled', 'removed', 'restored'], 'A note can be open, settled, removed or restored.'),
});

export const answerNoteSchema = z.strictObject({
  noteId: idSchema,
  /** The place in the thread that the writer saw last, so that an answer sent twice is one. */
  afterSeq: z.int().check(z.gte(0)),
  body: bodySchema,
});

/** One entry of a note. `replaces` names the entry that this one is an edit of. */
export const noteEntrySchema = z.strictObject({
  seq: z.int(),
  by: z.enum(['staff', 'student']),
  /** As it may be shown; null where it may not. */
  author: z.nullable(z.string()),
  body: z.string(),
  replaces: z.nullable(z.int()),
  at: z.string(),
});
export type NoteEntryView = z.infer<typeof noteEntrySchema>;

export type NoteView = {
  id: string;
  specimenVersionId: string;
  fromPair: number | null;
  toPair: number | null;
  suggestion: z.infer<typeof suggestionSchema>;
  settled: boolean;
  version: number;
  entries: NoteEntryView[];
};

export const stockNoteInputSchema = z.strictObject({
  courseId: idSchema,
  body: bodySchema,
  /** The finding it answers, or '' for any. */
  fault: z.enum(['', 'wide', 'tight', 'left', 'right', 'touching'], 'Choose one of the faults, or none.'),
  shared: z.boolean(),
});

export type Fault = z.infer<typeof stockNoteInputSchema>['fault'];
/** `own`: written by the reader, who alone can take it out of use. */
export type StockNoteView = { id: string; body: string; fault: Fault; shared: boolean; own: boolean };
