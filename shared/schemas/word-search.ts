import * as z from 'zod/mini';
import { idSchema } from './id';
import { sizeSchema } from './spacing';

/** Kinds of pairs that words can be looked for by, besides pairs that are typed as examples. */
export const pairKinds = [
  'round-round',
  'straight-round',
  'straight-straight',
  'diagonals',
  'open-side',
  'serifs',
  'accent-under-arm',
  'one-among-figures',
] as const;
export type PairKind = (typeof pairKinds)[number];

/** ISO 639-1. */
export const languageCodes = ['en', 'de', 'fr', 'es', 'pt', 'it', 'pl', 'cs'] as const;
export type LanguageCode = (typeof languageCodes)[number];

/** Which letters of a word are capitals: as its language writes it, the first, all. */
const letterings = ['written', 'capital', 'capitals'] as const;
export type Lettering = (typeof letterings)[number];

/** By what found lines are put in order. */
const wordOrders = ['pairs', 'uneven', 'common'] as const;
export type WordOrder = (typeof wordOrders)[number];

/** The most examples there may be. */
export const mostExamples = 20;
/** The most lines that are shown at once. */
export const mostFound = 24;

const exampleSchema = z
  .string()
  .check(z.normalize(), z.regex(/^[\p{L}\p{N}]{2}$/u, 'An example is two letters, such as AV.'));
const lengthSchema = z.int().check(z.gte(2, 'A word has 2 letters or more.'), z.lte(16, 'At most 16 letters.'));

/** What to look for, and in which face; `lettering` null is whatever the examples need. */
export const findWordsInput = z.strictObject({
  exerciseId: idSchema,
  face: z.string().check(z.minLength(1), z.maxLength(120)),
  size: sizeSchema,
  language: z.enum(languageCodes),
  examples: z.array(exampleSchema).check(z.maxLength(mostExamples, `At most ${mostExamples} examples.`)),
  alike: z.boolean(),
  kinds: z.array(z.enum(pairKinds)),
  lettering: z.nullable(z.enum(letterings)),
  shortest: lengthSchema,
  longest: lengthSchema,
  names: z.enum(['with', 'without', 'only']),
  words: z.literal([1, 2]),
  order: z.enum(wordOrders),
});
export type WordSearch = Omit<z.infer<typeof findWordsInput>, 'exerciseId' | 'face' | 'size' | 'language'>;
