import * as z from 'zod/mini';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { env } from '@/lib/env';
import { logError } from '@/lib/http/log';
import { keepingLetter } from '@/lib/mail/letters';
import { mailIsSetUp, sendMail } from '@/lib/mail/send';
import { daysLeft, noticeDue } from './days-left';

const payloadSchema = z.object({ courseId: z.string(), retainUntil: z.string() });
const anHour = 3_600_000;

/**
 * Writes to those who teach, 30 and 7 days before the day until which a course's work is kept, each once for a day and
 * however many processes run this. What a mail server refused is tried again later. Gives how many letters went out.
 */
export const sendKeepingNotices = operation({
  name: 'send-keeping-notices',
  allow: 'system',
  input: z.object({}),
  run: async ({ data, now }) => {
    if (!mailIsSetUp()) return { letters: 0 };
    for (const { id, retainUntil, timeZone } of await data.keeping.dated()) {
      const due = noticeDue(daysLeft(retainUntil!, timeZone, now));
      if (due !== null) await data.keeping.plan(`${id} ${retainUntil} ${due}`, { courseId: id, retainUntil }, now);
    }
    let letters = 0;
    for (let job = await data.keeping.take(now); job !== null; job = await data.keeping.take(now)) {
      try {
        letters += await write(data, z.parse(payloadSchema, JSON.parse(job.payload)), now);
        await data.keeping.done(job, now);
      } catch (error) {
        logError(error);
        await data.keeping.again(job, String(error), new Date(now.getTime() + anHour));
      }
    }
    return { letters };
  },
});

/** Nothing is written when the day was moved meanwhile. */
async function write(
  data: ScopedData,
  { courseId, retainUntil }: z.infer<typeof payloadSchema>,
  now: Date,
): Promise<number> {
  const course = (await data.keeping.dated()).find(({ id }) => id === courseId);
  if (course?.retainUntil !== retainUntil) return 0;
  const teachers = (await data.keeping.teachers(courseId)).flatMap(({ user }) => (user ? [user] : []));
  for (const { name, emailNorm } of teachers) {
    await sendMail(
      keepingLetter({
        to: emailNorm,
        name,
        course: course.title,
        until: retainUntil,
        days: daysLeft(retainUntil, course.timeZone, now),
        link: `${env().publicOrigin}/courses/${courseId}/keeping`,
      }),
    );
  }
  return teachers.length;
}
