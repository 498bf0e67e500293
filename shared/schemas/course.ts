import * as z from 'zod/mini';

/** The roles a member of a course can have. */
export const roles = ['instructor', 'assistant', 'student'] as const;
export const roleSchema = z.enum(roles);
export type Role = z.infer<typeof roleSchema>;

/** What follows from a role where no permission says it: who teaches the course, and who answers for it. */
const duties: Record<Role, { teaches: boolean; leads: boolean }> = {
  instructor: { teaches: true, leads: true },
  assistant: { teaches: true, leads: false },
  student: { teaches: false, leads: false },
};

/** Whether a member with this role, as it is stored, teaches. @throws ZodError for an unknown role. */
export const teaches = (role: string): boolean => duties[z.parse(roleSchema, role)].teaches;

/**
 * Whether a member with this role plans exercises, releases marks and manages people.
 * @throws ZodError as `teaches`.
 */
export const leadsCourse = (role: string): boolean => duties[z.parse(roleSchema, role)].leads;

/** A title on one line, 1 to 120 characters. */
export const courseTitleSchema = oneLine(
  'Give the course a title, for example its subject and term.',
  'A title can have at most 120 characters.',
  120,
);

/** A section's name on one line, 1 to 60 characters. */
export const sectionNameSchema = oneLine(
  'Give the section a name, for example the day it meets.',
  'A section’s name can have at most 60 characters.',
  60,
);

/** An IANA name such as Europe/Lisbon. Whether it exists is checked on the server, which has the list. */
export const timeZoneSchema = z
  .string()
  .check(z.minLength(1, 'Choose the time zone the course lives in.'), z.maxLength(64, 'This is not a time zone.'));

/** A day in the course's own calendar, ISO 8601 (2027-09-30). */
export const localDaySchema = z.iso.date('Write the day as year, month, day: 2027-09-30.');

/** How long a join link works, in days. */
export const joinLinkDaysSchema = z.coerce
  .number('Choose for how many days the link works.')
  .check(z.int(), z.gte(1, 'A link works for at least one day.'), z.lte(180, 'A link works for at most 180 days.'));

/** What the bench may show, each level including the ones before it. */
export const benchTellings = ['nothing', 'contact', 'evenness', 'everything'] as const;
export const benchTellingSchema = z.enum(benchTellings);
export type BenchTelling = z.infer<typeof benchTellingSchema>;

/**
 * What is different for one person in one course. Everything is optional: what is not there is as for everyone.
 * `moreTime` is in per cent of the time of a round (25 = a quarter longer); `workingView` multiplies the large view.
 */
export const accommodationsSchema = z.strictObject({
  moreTime: z.optional(z.int().check(z.gte(0), z.lte(300))),
  workingView: z.optional(z.number().check(z.gte(1), z.lte(4))),
  benchTells: z.optional(benchTellingSchema),
  gapsSpoken: z.optional(z.boolean()),
  singleKeysOff: z.optional(z.boolean()),
});
export type Accommodations = z.infer<typeof accommodationsSchema>;

/** What holds for a whole course; what is not there is as it was before it could be chosen. */
export const courseSettingsSchema = z.object({
  /** Students see no measured figures, not even after sending; their own offsets and marks stay. */
  figuresHidden: z._default(z.boolean(), false),
});
export type CourseSettings = z.infer<typeof courseSettingsSchema>;

function oneLine(missing: string, tooLong: string, most: number) {
  return z.pipe(
    z.pipe(
      z.string(),
      z.transform((typed: string) => typed.normalize('NFC').replace(/\s+/gu, ' ').trim()),
    ),
    z.string().check(z.minLength(1, missing), z.maxLength(most, tooLong)),
  );
}

/** What becomes of the dates in a copy: left empty, or moved by whole days (7 a week). */
export const copyDatesSchema = {
  dates: z.enum(['empty', 'moved'], 'Choose what becomes of the dates.'),
  days: z.coerce
    .number('Give the days as a whole number.')
    .check(
      z.int('Give the days as a whole number.'),
      z.gte(-3660, 'At most ten years back.'),
      z.lte(3660, 'At most ten years on.'),
    ),
};
