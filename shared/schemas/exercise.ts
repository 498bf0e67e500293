import * as z from 'zod/mini';
import { benchTellingSchema } from './course';
import { idSchema } from './id';
import { sizeSchema } from './spacing';

const referencesShownSchema = z.enum(['never', 'after-release', 'always']);
export type ReferencesShown = z.infer<typeof referencesShownSchema>;

/**
 * Default tolerance in 1/1000 em, where a reference does not say and was set only once. Chosen, not measured: about a
 * third of a pixel at 36 px.
 */
const defaultTolerance = 10;

/** What holds for a whole exercise. Read with defaults, so that older rows stay valid when a setting is added. */
export const exerciseSettingsSchema = z.object({
  benchTells: z._default(benchTellingSchema, 'nothing'),
  /** What it shows once a proof of the round has been sent. */
  benchTellsAfterProof: z._default(benchTellingSchema, 'evenness'),
  referencesShown: z._default(referencesShownSchema, 'after-release'),
  /** 1/1000 em. */
  tolerance: z._default(
    z
      .int('Give the tolerance as a whole number of thousandths of an em.')
      .check(z.gte(1, 'A tolerance is at least 1.'), z.lte(200, 'A tolerance is at most 200.')),
    defaultTolerance,
  ),
  /**
   * The smallest size the lettering will be used at: the ladder goes down to it, and crowding is judged there first.
   * Null: none is known.
   */
  smallestSize: z._default(z.nullable(sizeSchema), null),
  /** Markers see an alias in place of the student's name. */
  namesHidden: z._default(z.boolean(), false),
  /** A line here could be used on a traffic, exit, safety or accessibility sign. */
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

/** A date and time as it is typed, without a zone: 2026-11-24T18:00. The course's zone gives it meaning. */
const localDateTime = z
  .string()
  .check(z.regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/, 'Give a date and a time, such as 2026-11-24T18:00.'));

/**
 * What happens to a proof that arrives after the due date. The server's receipt decides.
 * `none`: not taken. `always`: taken and shown as late. `until`: taken and shown as late up to a second date.
 * `deductPerDay`: percent of the mark, for every started day of 24 hours; 0 for none.
 */
export const lateRuleSchema = z.object({
  accept: z._default(z.enum(['none', 'always', 'until']), 'always'),
  untilLocal: z._default(z.nullable(localDateTime), null),
  /** ISO instant that untilLocal meant. */
  untilAt: z._default(z.nullable(z.string()), null),
  deductPerDay: z._default(
    z
      .number('Give the deduction as a number of percent.')
      .check(z.gte(0, 'A deduction is at least 0%.'), z.lte(100, 'A deduction is at most 100%.')),
    0,
  ),
});
export type LateRule = z.infer<typeof lateRuleSchema>;

export const roundStateSchema = z.enum(['open', 'marking', 'released']);

/** A round as a person types it. Empty texts mean: opens when published; no due date. */
const orNothing = z.union(
  [z.literal(''), localDateTime],
  'Give a date and a time, such as 2026-11-24T18:00, or leave the field empty.',
);
const typedRound = {
  title: z.string().check(z.trim(), z.normalize(), z.maxLength(80, 'A round’s name has at most 80 characters.')),
  opensLocal: orNothing,
  dueLocal: orNothing,
  accept: z.enum(['none', 'always', 'until'], 'Choose what happens to late proofs.'),
  untilLocal: orNothing,
  deductPerDay: z
    .number('Give the deduction as a number of percent.')
    .check(z.gte(0, 'A deduction is at least 0%.'), z.lte(100, 'A deduction is at most 100%.')),
};

export const addRoundInput = z.strictObject({ exerciseId: idSchema, ...typedRound });
export const changeRoundInput = z.strictObject({ roundId: idSchema, version: z.int().check(z.gte(0)), ...typedRound });
export const removeRoundInput = z.strictObject({ roundId: idSchema, version: z.int().check(z.gte(0)) });
export type TypedRound = Omit<z.infer<typeof addRoundInput>, 'exerciseId'>;
export const roundOnly = z.strictObject({ roundId: idSchema });
export const extendRoundInput = z.strictObject({ roundId: idSchema, memberId: idSchema, dueLocal: localDateTime });
/** `version` of the section's own dates; −1 where it has none yet. */
export const sectionDatesInput = z.strictObject({
  roundId: idSchema,
  sectionId: idSchema,
  version: z.int().check(z.gte(-1)),
  opensLocal: orNothing,
  dueLocal: orNothing,
});
export const endExtensionInput = z.strictObject({ extensionId: idSchema });
