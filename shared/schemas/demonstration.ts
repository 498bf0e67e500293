import * as z from 'zod/mini';
import { idSchema } from './id';
import { spacingSchema } from './spacing';

/** Most steps of one demonstration: more than anyone would watch. */
export const STEP_LIMIT = 300;
/** Longest reason, in UTF-16 units. */
export const STEP_REASON_LIMIT = 500;

/** A change of an offset, 1/1000 em: it can go from one end to the other. */
const change = z.int().check(z.gte(-4000), z.lte(4000));
const pair = z.int().check(z.gte(0), z.lte(198));

/** One gesture: what it changed against the step before, the pairs it was about, and why. */
export const demonstrationStepSchema = z.strictObject({
  /** Added to the tracking, 1/1000 em. */
  tracking: change,
  /** [pair, what is added to its offset], only where something changed. */
  moves: z.array(z.tuple([pair, change])).check(z.maxLength(199)),
  /** First and last pair that the step is about; null: the whole line. */
  run: z.nullable(z.tuple([pair, pair])),
  /** '' = none given. */
  reason: z.string().check(z.maxLength(STEP_REASON_LIMIT, `A reason has at most ${STEP_REASON_LIMIT} characters.`)),
});
export type DemonstrationStep = z.infer<typeof demonstrationStepSchema>;

/** A setting as it was made: where it began, then step by step. */
export const demonstrationStepsSchema = z.strictObject({
  start: spacingSchema,
  steps: z
    .array(demonstrationStepSchema)
    .check(
      z.minLength(1, 'There is no step in it yet: space something first.'),
      z.maxLength(STEP_LIMIT, `A demonstration has at most ${STEP_LIMIT} steps.`),
    ),
});
export type DemonstrationSteps = z.infer<typeof demonstrationStepsSchema>;

const demonstrationTitleSchema = z
  .string()
  .check(
    z.trim(),
    z.normalize(),
    z.minLength(1, 'Give the demonstration a title.'),
    z.maxLength(120, 'A title has at most 120 characters.'),
  );

/** `demonstrationId` is made in the browser, so that sending again is the same demonstration. */
export const saveDemonstrationInput = z.strictObject({
  demonstrationId: idSchema.check(z.minLength(16)),
  specimenVersionId: idSchema,
  title: demonstrationTitleSchema,
  recorded: demonstrationStepsSchema,
});

const version = z.int().check(z.gte(0));
export const getDemonstrationInput = z.strictObject({ exerciseId: idSchema, demonstrationId: idSchema });
export const setDemonstrationShownInput = z.strictObject({ demonstrationId: idSchema, version, shown: z.boolean() });
export const removeDemonstrationInput = z.strictObject({ demonstrationId: idSchema, version, removed: z.boolean() });
export const renameDemonstrationInput = z.strictObject({
  demonstrationId: idSchema,
  version,
  title: demonstrationTitleSchema,
});
