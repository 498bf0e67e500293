import * as z from 'zod/mini';
import { sizeSchema } from './spacing';

/** An id of a row, as lib/data/ids.ts makes them. */
export const idSchema = z
  .string()
  .check(z.minLength(1), z.maxLength(64), z.regex(/^[A-Za-z0-9_-]+$/, 'This is not the id of anything.'));

/** How much the bench says about a spacing, from least to most. */
export const benchTellingSchema = z.enum(['nothing', 'contact', 'evenness', 'everything']);
export type BenchTelling = z.infer<typeof benchTellingSchema>;

export const referencesShownSchema = z.enum(['never', 'after-release', 'always']);
export type ReferencesShown = z.infer<typeof referencesShownSchema>;

/** Default tolerance in 1/1000 em, where a reference does not say and was set only once. Chosen, not measured: about a third of a pixel at 36 px. */
export const defaultTolerance = 10;

/** What holds for a whole exercise. Read with defaults, so that older rows stay valid when a setting is added. */
export const exerciseSettingsSchema = z.object({
  benchTells: z._default(benchTellingSchema, 'nothing'),
  /** What it tells once a proof of the round has been sent. */
  benchTellsAfterProof: z._default(benchTellingSchema, 'evenness'),
  referencesShown: z._default(referencesShownSchema, 'after-release'),
  /** 1/1000 em. */
  tolerance: z._default(
    z
      .int('Give the tolerance as a whole number of thousandths of an em.')
      .check(z.gte(1, 'A tolerance is at least 1.'), z.lte(200, 'A tolerance is at most 200.')),
    defaultTolerance,
  ),
  /** The smallest size the lettering will be used at: the ladder goes down to it, and crowding is judged there first. Null: none is known. */
  smallestSize: z._default(z.nullable(sizeSchema), null),
  /** Markers see an alias in place of the student's name. */
  namesHidden: z._default(z.boolean(), false),
  /** A line here could stand on a traffic, exit, safety or accessibility sign. */
  safetySigns: z._default(z.boolean(), false),
});
export type ExerciseSettings = z.infer<typeof exerciseSettingsSchema>;

export const exerciseStateSchema = z.enum(['draft', 'published', 'closed']);
export type ExerciseState = z.infer<typeof exerciseStateSchema>;

const title = z
  .string()
  .check(
    z.trim(),
    z.normalize(),
    z.minLength(1, 'Give the exercise a title.'),
    z.maxLength(120, 'A title has at most 120 characters.'),
  );
const brief = z
  .string()
  .check(z.normalize(), z.maxLength(8000, 'A brief has at most 8000 characters; link to a longer text.'));

export const createExerciseInput = z.strictObject({ courseId: idSchema, title, brief, safetySigns: z.boolean() });

export const exerciseOnly = z.strictObject({ exerciseId: idSchema });

/** A change of state names the version it was decided on. */
export const exerciseAtVersion = z.strictObject({ exerciseId: idSchema, version: z.int().check(z.gte(0)) });

export const changeExerciseInput = z.strictObject({
  exerciseId: idSchema,
  version: z.int().check(z.gte(0)),
  title,
  brief,
  settings: exerciseSettingsSchema,
});
