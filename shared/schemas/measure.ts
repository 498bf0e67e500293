import * as z from 'zod/mini';
import { findingSchema } from './finding';
import { groundSchema, sizeSchema } from './spacing';

/**
 * What measuring a line gives. Every length is in 1/1000 em unless its name ends in another unit;
 * built-in, offset and total are never mixed: total = builtIn + tracking + offset.
 */
const number = z.number();
const index = z.int().check(z.gte(0));

export const sideKindSchema = z.enum(['straight', 'round', 'slanted-in', 'slanted-out', 'open', 'arched']);
/**
 * The kind of one side of a letter: slanted-in leans away from the neighbour upwards (A), slanted-out downwards (V).
 */
export type SideKind = z.infer<typeof sideKindSchema>;

const groupSchema = z.enum(['letters', 'capitals', 'figures', 'punctuation', 'word-space']);
/** Pairs are only held against pairs of their own group. */
export type PairGroup = z.infer<typeof groupSchema>;

export const contactSchema = z.enum(['apart', 'near', 'touching', 'crossing']);

/**
 * What type designers would usually give a pair (shared/usual-range): totals beyond the sidebearings, whole 1/1000 em.
 */
export const usualRangeSchema = z.strictObject({
  low: z.int(),
  halfLow: z.int(),
  middle: z.int(),
  mean: z.int(),
  halfHigh: z.int(),
  high: z.int(),
  /** The chance that the pair is left alone, 0 to 1. */
  leftAlone: number,
});

const pairMeasureSchema = z.strictObject({
  index,
  left: z.string(),
  right: z.string(),
  builtIn: number,
  tracking: z.int(),
  offset: z.int(),
  total: number,
  /** Width of the white space inside the pair; 0 where the letters are neighbours. It is not part of the total. */
  wordSpace: number,
  group: groupSchema,
  apparentGap: number,
  /**
   * The same white as an area, the one that is hatched, in thousandths of (1/1000 em)²: apparent gap × the height
   * counted.
   */
  area: number,
  clearance: number,
  contact: contactSchema,
  /** The side of each letter that looks into the gap. */
  sides: z.strictObject({ left: sideKindSchema, right: sideKindSchema }),
  /** The apparent gap this pair is held against (shared/measure/pair-references.ts); null where nothing is. */
  reference: z.nullable(number),
  /** The offset (whole 1/1000 em, tracking as it is) at which the pair meets its reference; it may open. */
  suggestion: z.nullable(z.int()),
  /** Null where the usual range is silent. */
  usual: z.nullable(usualRangeSchema),
  /** Above 0 wider than usual; it orders what to look at (shared/usual-range/judge-line.ts). */
  surprise: z.nullable(number),
  /** Beyond the nine tenths of designers by more than can be overlooked. */
  outside: z.nullable(z.boolean()),
});
export type PairMeasure = z.infer<typeof pairMeasureSchema>;

export const lineMeasureSchema = z.strictObject({
  engine: z.int(),
  text: z.string(),
  letters: z.array(z.string()),
  size: sizeSchema,
  ground: groundSchema,
  /** Smallest size of use, where the exercise names one; filling in is judged there. */
  smallestSize: z.optional(sizeSchema),
  pairs: z.array(pairMeasureSchema),
  line: z.strictObject({
    /** Centre (median) of the line's letter pairs as set; null when it has none. */
    reference: z.nullable(number),
    /** The same of this line as the face gives it, with tracking and offsets at 0. */
    asBuilt: z.nullable(number),
    /** The same of the face's control pairs as the face gives them, without kerning. */
    faceReference: z.nullable(number),
    /** Least horizontal white between H and H, serif tips included; and from stem to stem. */
    stemGap: z.nullable(number),
    stemToStem: z.nullable(number),
    /** How much wider (above 0) or tighter than usual the whole line is, tracking included. */
    tightness: number,
    /** Median absolute deviation of the apparent gaps from the centre over the centre; null under six pairs. */
    evennessGap: z.nullable(number),
    /** Median counter of the line's letters, as area over height; null when no letter has one. */
    counter: z.nullable(number),
    /** Counter of the face's n (else H), which its own balance is taken from. */
    faceCounter: z.nullable(number),
  }),
});
/** A line in numbers, without sentences. */
export type LineMeasure = z.infer<typeof lineMeasureSchema>;

/** A line in numbers with what was found in them, as facts: what is stored of a proof's line. */
export type LineReport = LineMeasure & { findings: z.infer<typeof findingSchema>[] };

export type ReferenceSpacing = {
  /** Who set it, as it may be shown. */
  author: string;
  tracking: number;
  offsets: number[];
  /** One a pair, from 0: how far a setting may be from this one and still be called the same. */
  tolerances: number[];
  /** One a pair, null where none was given. */
  reasons: (string | null)[];
};

const pairComparisonSchema = z.strictObject({
  index,
  /** Tracking + offset, this setting minus the reference. */
  deviation: number,
  /** What is left of it when the tightness of the whole line is taken out. */
  rest: number,
  tolerance: number,
  within: z.boolean(),
  reason: z.nullable(z.string()),
  /** True when it is outside the nearest reference's tolerance and inside another's. */
  asAnother: z.boolean(),
  /** Most minus least rest-position among the references; 0 with one. */
  referencesDiffer: number,
});
export type PairComparison = z.infer<typeof pairComparisonSchema>;

export const lineComparisonSchema = z.strictObject({
  engine: z.int(),
  /** Which of the references given is nearest; null when none was given. */
  nearest: z.nullable(index),
  author: z.nullable(z.string()),
  /** Median deviation of the pairs: above 0 the line is set wider than the reference. */
  tightness: number,
  tightnessTolerance: number,
  pairs: z.array(pairComparisonSchema),
  /** Pairs outside their tolerance, a letter out of place counted once. */
  outside: z.int(),
  /** Mean of the absolute rests. */
  meanRest: number,
  /** Pairs that touch or cross in the nearest reference as well: meant, and no fault. */
  meantContacts: z.array(index),
  /** One a reference, in the order given: mean of |rest| over tolerance. */
  distances: z.array(number),
  findings: z.array(findingSchema),
});
export type LineComparison = z.infer<typeof lineComparisonSchema>;
