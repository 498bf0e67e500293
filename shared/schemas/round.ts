import * as z from 'zod/mini';
import { idSchema } from './exercise';

/** A date and time as it is typed, without a zone: 2026-11-24T18:00. The course's zone gives it meaning. */
export const localDateTime = z
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
      .check(z.gte(0, 'A deduction is at least 0 %.'), z.lte(100, 'A deduction is at most 100 %.')),
    0,
  ),
});
export type LateRule = z.infer<typeof lateRuleSchema>;

export const roundStateSchema = z.enum(['open', 'marking', 'released']);
export type RoundState = z.infer<typeof roundStateSchema>;

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
    .check(z.gte(0, 'A deduction is at least 0 %.'), z.lte(100, 'A deduction is at most 100 %.')),
};

export const addRoundInput = z.strictObject({ exerciseId: idSchema, ...typedRound });
export const changeRoundInput = z.strictObject({ roundId: idSchema, version: z.int().check(z.gte(0)), ...typedRound });
export const removeRoundInput = z.strictObject({ roundId: idSchema, version: z.int().check(z.gte(0)) });
export type TypedRound = Omit<z.infer<typeof addRoundInput>, 'exerciseId'>;
export const roundOnly = z.strictObject({ roundId: idSchema });
export const extendRoundInput = z.strictObject({ roundId: idSchema, memberId: idSchema, dueLocal: localDateTime });
export const endExtensionInput = z.strictObject({ extensionId: idSchema });
