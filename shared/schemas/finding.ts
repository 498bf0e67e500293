import * as z from 'zod/mini';
import { sizeSchema } from './spacing';

/**
 * What can be found in a line, as facts: a kind, where it is, a value with its unit, a direction, and whatever a
 * sentence about it needs. Sentences themselves are made where they are shown (shared/wording/finding-words.ts). Facts
 * are stored with measurements. A kind that is no longer found stays here, so that what was stored stays readable; data
 * added to a kind later has a default for the same reason.
 */
const number = z.number();
const index = z.int().check(z.gte(0));

/** A remark is about this spacing, a hint about common practice, a fact only informs. */
const weight = z.enum(['remark', 'hint', 'fact']);

/** Two letters as they are seen, left and right. */
const letters = z.tuple([z.string(), z.string()]);

/**
 * A length of the face that one can see, to hold a difference against: from stem to stem of HH, serifs apart; where the
 * face has no H, the counter of its n. 1/1000 em.
 */
const yardstickSchema = z.nullable(z.strictObject({ of: z.enum(['stems', 'counter']), length: number }));
export type Yardstick = z.infer<typeof yardstickSchema>;
const beside = yardstickSchema;

const wideOrTight = z.enum(['wide', 'tight']);
const perMille = z.literal('per-mille');

/** Where a fact is: the whole line, one pair, or a run of pairs (first and last, both included). */
const wholeLine = { weight, from: z.null(), to: z.null() };
const onePair = { weight, from: index, to: index, letters };
const run = { weight, from: index, to: index };

const none = z.null();

export const findingSchema = z.discriminatedUnion('kind', [
  // The line by itself.
  z.object({
    kind: z.literal('evenness-gap'),
    ...wholeLine,
    value: number,
    unit: z.literal('percent'),
    direction: none,
  }),
  /** No longer found, as `by: 'area'` further down: area is the apparent gap times the height counted. */
  z.object({
    kind: z.literal('evenness-area'),
    ...wholeLine,
    value: number,
    unit: z.literal('percent'),
    direction: none,
  }),
  /** The gap with most and with least white of its line; `value` is what it has more than the middle. */
  z.object({
    kind: z.literal('widest'),
    ...onePair,
    by: z.enum(['apparent-gap', 'area']),
    /** Why that is no fault: its letters nearly meet, or designers usually leave it so. */
    why: z._default(z.nullable(z.enum(['near', 'usual'])), null),
    value: number,
    unit: perMille,
    direction: z.literal('wide'),
    beside,
  }),
  z.object({
    kind: z.literal('narrowest'),
    ...onePair,
    by: z.enum(['apparent-gap', 'area']),
    value: number,
    unit: perMille,
    direction: z.literal('tight'),
    beside,
  }),
  /** One apparent gap, where the line is too short for more. */
  z.object({ kind: z.literal('gap'), ...onePair, value: number, unit: perMille, direction: none, beside }),
  /** A typical gap over the white inside the letters. */
  z.object({
    kind: z.literal('balance'),
    ...wholeLine,
    value: number,
    unit: z.literal('ratio'),
    direction: z.nullable(wideOrTight),
  }),
  /** Letters of one pair set differently within the line; `wide` and `narrow` are the two places. */
  z.object({
    kind: z.literal('set-differently'),
    ...run,
    letters,
    wide: index,
    narrow: index,
    value: number,
    unit: perMille,
    direction: none,
    beside,
  }),
  z.object({
    kind: z.literal('tightness-face'),
    ...wholeLine,
    value: number,
    unit: perMille,
    direction: z.nullable(wideOrTight),
    beside,
  }),
  z.object({ kind: z.literal('capitals'), ...wholeLine, value: number, unit: perMille, direction: none }),
  z.object({ kind: z.literal('touching'), ...onePair, value: number, unit: perMille, direction: z.literal('tight') }),
  z.object({ kind: z.literal('crossing'), ...onePair, value: number, unit: perMille, direction: z.literal('tight') }),
  /** May fill in at `size`, which is the smallest in use where `smallest` is true; `value` is what is left, in px. */
  z.object({
    kind: z.literal('filling'),
    ...onePair,
    size: sizeSchema,
    smallest: z.boolean(),
    clearance: number,
    value: number,
    unit: z.literal('px'),
    direction: z.literal('tight'),
    beside,
  }),
  z.object({
    kind: z.literal('mistakable'),
    ...onePair,
    readAs: z.string(),
    value: number,
    unit: perMille,
    direction: z.literal('tight'),
    beside,
  }),
  z.object({
    kind: z.literal('dark-ground'),
    ...wholeLine,
    value: number,
    unit: perMille,
    direction: z.literal('tight'),
  }),
  /** A word space hardly wider than the gaps between letters; `gap` is what it looks like. */
  z.object({
    kind: z.literal('word-space'),
    ...onePair,
    gap: number,
    value: number,
    unit: perMille,
    direction: z.literal('tight'),
    beside,
  }),
  /** The widest word space beside the narrowest, whose letters are `narrow`. */
  z.object({
    kind: z.literal('word-spaces-differ'),
    ...onePair,
    narrow: letters,
    value: number,
    unit: perMille,
    direction: z.literal('wide'),
    beside,
  }),

  // Beside what type designers usually do (shared/usual-range).
  /** Outside the usual range, and the white one sees agrees. `value` is the miss from the centre of the range. */
  z.object({
    kind: z.literal('usual'),
    ...onePair,
    surprise: number,
    /** Total beyond the sidebearings, the line's tightness taken out; and the half range of the same. */
    own: number,
    half: z.tuple([number, number]),
    /** The chance that designers leave the pair alone. */
    leftAlone: number,
    lineTightness: number,
    size: sizeSchema,
    value: number,
    unit: perMille,
    direction: wideOrTight,
    beside,
  }),
  /** The most conspicuous pair: what a headline names beside the spread. */
  z.object({
    kind: z.literal('stands-out'),
    ...onePair,
    surprise: number,
    value: number,
    unit: perMille,
    direction: wideOrTight,
    beside,
  }),
  /** The line is set by contact; its nearest pair, and by how much the furthest (`furthest`) is further apart. */
  z.object({
    kind: z.literal('set-tight'),
    ...onePair,
    furthest: letters,
    value: number,
    unit: perMille,
    direction: none,
  }),
  /** Running text joins these letters to one shape. */
  z.object({ kind: z.literal('joined'), ...onePair, value: number, unit: perMille, direction: none }),

  // The same text in several settings.
  z.object({
    kind: z.literal('size-response'),
    ...wholeLine,
    sizes: z.tuple([sizeSchema, sizeSchema]),
    done: number,
    expected: number,
    value: number,
    unit: perMille,
    direction: wideOrTight,
  }),
  z.object({
    kind: z.literal('weight-copied'),
    ...wholeLine,
    weights: z.tuple([number, number]),
    value: number,
    unit: z.literal('count'),
    direction: z.literal('tight'),
  }),
  z.object({
    kind: z.literal('weight-share'),
    ...wholeLine,
    weights: z.tuple([number, number]),
    value: number,
    unit: z.literal('ratio'),
    direction: z.literal('tight'),
  }),
  z.object({
    kind: z.literal('face-copied'),
    ...wholeLine,
    families: z.tuple([z.string(), z.string()]),
    value: number,
    unit: z.literal('count'),
    direction: none,
  }),

  // Beside the nearest reference.
  z.object({
    kind: z.literal('deviation'),
    ...onePair,
    asAnother: z.boolean(),
    /** Outside the reference's tolerance and inside the usual range. */
    designersVary: z._default(z.boolean(), false),
    value: number,
    unit: perMille,
    direction: wideOrTight,
    beside,
  }),
  z.object({
    kind: z.literal('tightness'),
    ...wholeLine,
    value: number,
    unit: perMille,
    direction: wideOrTight,
    beside,
  }),
  /** One letter out of place, by position; the run is the gaps on both sides of it. */
  z.object({
    kind: z.literal('misplaced'),
    ...run,
    letter: index,
    name: z.string(),
    value: number,
    unit: perMille,
    direction: z.enum(['left', 'right']),
    beside,
  }),
  z.object({
    kind: z.literal('agreement'),
    ...onePair,
    references: z.int(),
    value: number,
    unit: perMille,
    direction: none,
    beside,
  }),
  z.object({
    kind: z.literal('within'),
    ...wholeLine,
    author: z.string(),
    value: number,
    unit: z.literal('count'),
    direction: none,
  }),
]);
export type Finding = z.infer<typeof findingSchema>;
export type FindingKind = Finding['kind'];
export type FindingOf<Kind extends FindingKind> = Extract<Finding, { kind: Kind }>;

/** A finding with its sentence, as engine 1 stored it and as a release keeps it: the sentence stays, word for word. */
export const wordedFindingSchema = z.object({
  kind: z.string(),
  weight,
  from: z.nullable(index),
  to: z.nullable(index),
  direction: z.nullable(z.string()),
  sentence: z.string(),
  /** The size of it in something that can be seen, e.g. “about a third of the stem gap”. */
  comparison: z.nullable(z.string()),
});
export type WordedFinding = z.infer<typeof wordedFindingSchema>;

/** A finding of a stored measurement or comparison: in words where engine 1 made it, as facts ever since. */
export const storedFindingSchema = z.union([wordedFindingSchema, findingSchema]);
export type StoredFinding = z.infer<typeof storedFindingSchema>;
