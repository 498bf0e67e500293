import * as z from 'zod/mini';
import { usualRangeSchema } from './measure';

/**
 * A pack: all that a browser needs to draw and measure one line, in whole font units (y runs up).
 * It holds no derived figures; profiles, measures and findings are worked out from it.
 *
 * Letters are the visible grapheme clusters of the line, one entry each. White space is not a letter:
 * the gap between the last letter of a word and the first of the next is one pair, whose `wordSpace` is above 0.
 */
const whole = z.int().check(z.gte(-1_000_000), z.lte(1_000_000));

/** Absolute commands M L Q C Z with whole numbers, e.g. `M0 0L10 700Q20 720 40 700Z`. */
const path = z.string().check(z.maxLength(200_000), z.regex(/^(?:[MLQCZ](?:-?\d+(?: -?\d+)*)?)*$/));

const packGlyph = z.strictObject({
  /** The grapheme cluster in NFC, e.g. `é`. */
  cluster: z.string().check(z.minLength(1), z.maxLength(64)),
  advance: whole,
  path,
});

const packFace = z.strictObject({
  family: z.string(),
  /** Name of the instance, e.g. `Bold Italic`. */
  style: z.string(),
  weight: z.int(),
  italic: z.boolean(),
  /** Axis values of a variable face, e.g. { opsz: 36 }. */
  axes: z.record(z.string(), z.number()),
  /** Sizes in px that the outlines are drawn for, when the face says; null means a reading face. */
  drawnFor: z.nullable(z.strictObject({ from: z.number(), to: z.number() })),
});

export const packSchema = z.strictObject({
  format: z.literal('kerncrit-pack'),
  /** The first version has no `slant`, and its contours may overlap. */
  version: z.literal([1, 2]),
  kind: z.enum(['font', 'svg', 'photo']),
  /** The line in NFC. */
  text: z.string().check(z.minLength(1), z.maxLength(400)),
  unitsPerEm: z.int().check(z.gte(16), z.lte(16_384)),
  /** Heights over the baseline; descender is negative. `ascenderTop` is the top of d (its measured extreme). */
  vertical: z.strictObject({ ascender: whole, descender: whole, capHeight: whole, xHeight: whole, ascenderTop: whole }),
  /** How far a stem leans to the right over 1000 of height; 0 for an upright. Where it is missing, H or n shows it. */
  slant: z.optional(whole),
  face: z.nullable(packFace),
  glyphs: z.array(packGlyph).check(z.minLength(1), z.maxLength(400)),
  /** Index into `glyphs`, one per letter of the line. */
  letters: z.array(z.int().check(z.gte(0))).check(z.minLength(1), z.maxLength(200)),
  /** Built-in kerning of each pair in font units, kerning with a word space between included. Length letters − 1. */
  builtIn: z.array(whole),
  /**
   * What designers would usually give each pair, this face's own kerning of other pairs considered
   * (lib/face/own-kerning.ts); null where that is silent. Missing in packs of the first version, which are read from
   * their shapes. Length letters − 1.
   */
  usual: z.optional(z.array(z.nullable(usualRangeSchema))),
  /** Advance of the white space inside each pair, 0 where there is none. Length letters − 1. */
  wordSpace: z.array(whole),
  /**
   * Indices into `glyphs` of the control letters, from which the face's own reference is taken; null where the face
   * lacks one.
   */
  control: z.strictObject({
    H: z.nullable(z.int()),
    O: z.nullable(z.int()),
    n: z.nullable(z.int()),
    o: z.nullable(z.int()),
  }),
  /**
   * Pairs or runs that running text would have set as a ligature, by letter position, e.g. { from: 2, to: 3, text: 'fi'
   * }.
   */
  ligatures: z.array(z.strictObject({ from: z.int(), to: z.int(), text: z.string() })),
});

export type Pack = z.infer<typeof packSchema>;
export type PackGlyph = Pack['glyphs'][number];

export class PackError extends Error {
  constructor(what: string) {
    super(`This is not a sound pack: ${what}.`);
    this.name = 'PackError';
  }
}

/** Checks a pack on reading: its shape, and that its parts agree with each other. Throws PackError. */
export function parsePack(value: unknown): Pack {
  const parsed = packSchema.safeParse(value);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    throw new PackError(`${issue?.path.join('.') || 'the whole'}: ${issue?.message ?? 'not as it should be'}`);
  }
  const pack = parsed.data;
  const pairs = pack.letters.length - 1;
  if (pack.text !== pack.text.normalize('NFC')) throw new PackError('its text is not in NFC');
  if (pack.builtIn.length !== pairs)
    throw new PackError(`${pack.letters.length} letters need ${pairs} built-in values, not ${pack.builtIn.length}`);
  if (pack.usual && pack.usual.length !== pairs)
    throw new PackError(`${pack.letters.length} letters need ${pairs} usual ranges, not ${pack.usual.length}`);
  if (pack.wordSpace.length !== pairs)
    throw new PackError(`${pack.letters.length} letters need ${pairs} word spaces, not ${pack.wordSpace.length}`);
  for (const index of [...pack.letters, ...Object.values(pack.control)]) {
    if (index !== null && (index < 0 || index >= pack.glyphs.length))
      throw new PackError(`it names glyph ${index}, but has ${pack.glyphs.length}`);
  }
  for (const run of pack.ligatures) {
    if (run.from < 0 || run.to <= run.from || run.to > pairs)
      throw new PackError(`a ligature from ${run.from} to ${run.to} is not in the line`);
  }
  if (pack.kind === 'font' && pack.face === null) throw new PackError('its kind is font, but no face is named');
  return pack;
}
