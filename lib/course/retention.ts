import { Temporal } from 'temporal-polyfill';
import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict } from '@/lib/data/retry';
import { env } from '@/lib/env';
import { logError } from '@/lib/log';
import { retentionLetter } from '@/lib/mail/letters';
import { mailIsSetUp, sendMail } from '@/lib/mail/send';
import { courseId } from './courses';

/** The last day of a course's retention, whether it is near or past, and how many students the course still names. */
export const getRetention = operation({
  name: 'get-retention',
  allow: 'course:run',
  input: z.object({ courseId }),
  run: async ({ data, now }, input) => {
    const course = await data.courses.byId(input.courseId);
    if (!course) throw notFound();
    const { id, title, timeZone, retainUntil } = course;
    const left = retainUntil === null ? null : daysLeft(retainUntil, timeZone, now);
    return {
      course: { id, title, timeZone, role: 'instructor' as const },
      retainUntil,
      daysLeft: left,
      near: left !== null && (left < 0 || noticeDue(left) !== null),
      students: await data.retention.countStudents(id),
    };
  },
});

/**
 * Ends the retention of a course's work once its day is past: all students become pseudonyms, and what they wrote and
 * what was written about their proofs goes; spacings and marks stay. Asked for by writing the course's title. Never
 * done by itself.
 */
export const endRetention = operation({
  name: 'end-retention',
  allow: 'course:run',
  input: z.object({ courseId, title: z.string().check(z.maxLength(1000)) }),
  run: async ({ data, now }, { courseId: id, title }) => {
    const course = await data.courses.byId(id);
    if (!course) throw notFound();
    if (course.retainUntil === null)
      throw new AppError(
        'CONFLICT',
        'Nothing was changed: the course has no day until which its work is kept. Set it in the settings first, by your school’s rule.',
      );
    if (daysLeft(course.retainUntil, course.timeZone, now) >= 0)
      throw new AppError(
        'CONFLICT',
        `Nothing was changed: the work is kept until ${course.retainUntil}, and that day is not past yet.`,
      );
    if (title.normalize('NFC').trim() !== course.title)
      throw new AppError('INVALID', 'Nothing was changed.', {
        fields: {
          title: `This is not the title of the course, which is “${course.title}” (given: “${title.slice(0, 60)}”).`,
        },
      });
    const students = await retryOnConflict(() =>
      data.transaction(async (inside) => {
        const count = await inside.erase.studentsOf(id, now);
        await inside.audit.record(
          {
            courseId: id,
            verb: 'retention ended',
            subject: `course:${id}`,
            details: { students: count, keptUntil: course.retainUntil },
          },
          now,
        );
        return count;
      }),
    );
    return { students };
  },
});

const payloadSchema = z.object({ courseId: z.string(), retainUntil: z.string() });
const anHour = 3_600_000;

/**
 * Writes to the instructors 30 and 7 days before the last day of a course's retention, once each for a day, however
 * many processes run this. Refused mails are tried again later. Returns the number of mails sent.
 */
export const sendRetentionNotices = operation({
  name: 'send-retention-notices',
  allow: 'system',
  input: z.object({}),
  run: async ({ data, now }) => {
    if (!mailIsSetUp()) return { letters: 0 };
    for (const { id, retainUntil, timeZone } of await data.retention.dated()) {
      const due = noticeDue(daysLeft(retainUntil!, timeZone, now));
      if (due !== null) await data.retention.plan(`${id} ${retainUntil} ${due}`, { courseId: id, retainUntil }, now);
    }
    let letters = 0;
    for (let job = await data.retention.take(now); job !== null; job = await data.retention.take(now)) {
      try {
        letters += await write(data, z.parse(payloadSchema, JSON.parse(job.payload)), now);
        await data.retention.done(job, now);
      } catch (error) {
        logError(error);
        await data.retention.again(job, String(error), new Date(now.getTime() + anHour));
      }
    }
    return { letters };
  },
});

/** Nothing is written when the day was moved meanwhile. */
async function write(
  data: ScopedData,
  { courseId: id, retainUntil }: z.infer<typeof payloadSchema>,
  now: Date,
): Promise<number> {
  const course = (await data.retention.dated()).find((dated) => dated.id === id);
  if (course?.retainUntil !== retainUntil) return 0;
  const instructors = (await data.retention.instructors(id)).flatMap(({ user }) => (user ? [user] : []));
  for (const { name, emailNorm } of instructors) {
    await sendMail(
      retentionLetter({
        to: emailNorm,
        name,
        course: course.title,
        until: retainUntil,
        days: daysLeft(retainUntil, course.timeZone, now),
        link: `${env().publicOrigin}/courses/${id}/retention`,
      }),
    );
  }
  return instructors.length;
}

/** Before the last day of retention, instructors get a notice this many days ahead, once each. */
const noticeDays = [30, 7] as const;

/** Whole days from today, in the course's zone, to the last day of retention: 0 on that day, negative after it. */
export function daysLeft(retainUntil: string, timeZone: string, now: Date): number {
  const today = Temporal.Instant.fromEpochMilliseconds(now.getTime()).toZonedDateTimeISO(timeZone).toPlainDate();
  return today.until(Temporal.PlainDate.from(retainUntil), { largestUnit: 'days' }).days;
}

/** The notice that is due: the nearest one whose day has been reached; none before, and none after the last day. */
export const noticeDue = (left: number): (typeof noticeDays)[number] | null =>
  left < 0 ? null : (noticeDays.findLast((days) => left <= days) ?? null);
