import * as z from 'zod/mini';
import { groundSchema, sizeSchema, spacingSchema } from './spacing';
import { idSchema } from './id';

/** How many specimens one exercise can hold, and how many the builder makes at once. */
export const mostSpecimens = 120;
export const mostAtOnce = 60;

/**
 * A line to be spaced. White space is folded to single spaces; two visible letters are the least that has a pair
 * (checked when it is split).
 */
const lineSchema = z.string().check(
  z.normalize(),
  z.overwrite((line) => line.replace(/\s+/gu, ' ').trim()),
  z.minLength(2, 'A line needs at least two letters.'),
  z.maxLength(200, 'A line has at most 200 characters.'),
);

/** How a start that is wrong on purpose was made. */
const startMadeSchema = z.enum(['by-hand', 'one-gap', 'tight', 'area']);
export type StartMade = z.infer<typeof startMadeSchema>;

/** What is asked for as a line's start; amounts in 1/1000 em. `by-hand`: the instructor's own trial of the line. */
const askedStartSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('built-in') }),
  z.strictObject({ kind: z.literal('by-hand') }),
  z.strictObject({
    kind: z.literal('one-gap'),
    gap: z.int('Choose the gap.').check(z.gte(0, 'Choose the gap.'), z.lte(198)),
    by: z.int('Give the amount as a whole number.').check(
      z.gte(-400, 'A gap starts at most 400/1000 em too tight.'),
      z.lte(400, 'A gap starts at most 400/1000 em too wide.'),
      z.refine((by) => by !== 0, 'Give an amount other than 0.'),
    ),
  }),
  z.strictObject({
    kind: z.literal('tight'),
    by: z
      .int('Give the amount as a whole number.')
      .check(z.gte(1, 'Give at least 1.'), z.lte(200, 'A line starts at most 200/1000 em too tight.')),
  }),
  z.strictObject({ kind: z.literal('area') }),
]);
export type AskedStart = z.infer<typeof askedStartSchema>;
/** Those that are made from the line alone. */
export type MadeStart = Exclude<AskedStart, { kind: 'built-in' | 'by-hand' }>;

/** Further details of a specimen version. Pairs by index. */
export const specimenDetailsSchema = z.object({
  /** A remark for the student, e.g. “for a book’s spine”. */
  remark: z._default(
    z.string().check(z.trim(), z.normalize(), z.maxLength(300, 'A remark has at most 300 characters.')),
    '',
  ),
  /** A spacing that is wrong on purpose, from which students begin; null: they begin from the face's own. */
  start: z._default(z.nullable(z.object({ made: startMadeSchema, spacing: spacingSchema })), null),
});
export type LineStart = NonNullable<z.infer<typeof specimenDetailsSchema>['start']>;
export type SpecimenDetails = z.infer<typeof specimenDetailsSchema>;

export const addSpecimensInput = z.strictObject({
  exerciseId: idSchema,
  lines: z.array(lineSchema).check(z.minLength(1, 'Give at least one line.'), z.maxLength(mostAtOnce)),
  faces: z
    .array(z.string().check(z.minLength(1), z.maxLength(120)))
    .check(z.minLength(1, 'Choose at least one face.'), z.maxLength(mostAtOnce)),
  sizes: z.array(sizeSchema).check(z.minLength(1, 'Give at least one size, such as 72 px.'), z.maxLength(mostAtOnce)),
  grounds: z.array(groundSchema).check(z.minLength(1, 'Choose a ground.'), z.maxLength(2)),
});

const changed = {
  text: lineSchema,
  face: z.string().check(z.minLength(1), z.maxLength(120)),
  size: sizeSchema,
  ground: groundSchema,
  remark: specimenDetailsSchema.shape.remark,
};

/** `number` is the version that was on the screen. */
export const changeSpecimenInput = z.strictObject({
  specimenId: idSchema,
  number: z.int().check(z.gte(1)),
  ...changed,
});
/** `number` is the version that was on the screen. */
export const setLineStartInput = z.strictObject({
  specimenId: idSchema,
  number: z.int().check(z.gte(1)),
  start: askedStartSchema,
});
export const previewChangeInput = z.strictObject({ specimenId: idSchema, ...changed });
export const specimenOnly = z.strictObject({ specimenId: idSchema });
export const moveSpecimenInput = z.strictObject({ specimenId: idSchema, to: z.enum(['earlier', 'later']) });
