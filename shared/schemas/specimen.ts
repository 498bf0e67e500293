import * as z from 'zod/mini';
import { groundSchema, sizeSchema } from './spacing';
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

/** Further details of a specimen version. Pairs by index. */
export const specimenDetailsSchema = z.object({
  /** A remark for the student, e.g. “for a book’s spine”. */
  remark: z._default(
    z.string().check(z.trim(), z.normalize(), z.maxLength(300, 'A remark has at most 300 characters.')),
    '',
  ),
});
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
export const previewChangeInput = z.strictObject({ specimenId: idSchema, ...changed });
export const specimenOnly = z.strictObject({ specimenId: idSchema });
export const moveSpecimenInput = z.strictObject({ specimenId: idSchema, to: z.enum(['earlier', 'later']) });
