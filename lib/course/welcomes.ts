import * as z from 'zod/mini';
import { operation } from '@/lib/access/operation';
import { makePasswordLink } from '@/lib/account/password-links';
import type { ScopedData } from '@/lib/data';
import { env } from '@/lib/env';
import { logError } from '@/lib/log';
import { welcomeLetter } from '@/lib/mail/letters';
import { mailIsSetUp, sendMail } from '@/lib/mail/send';

const payloadSchema = z.object({ userId: z.string(), courseId: z.string(), createdById: z.string(), days: z.number() });
const anHour = 3_600_000;
/** After a day of trying every hour the address is taken for a wrong one. */
const mostTries = 24;

/**
 * Writes to new people, one after the other, with a link to set their password. Refused mails are tried again an hour
 * later, for a day; a person who gets none can ask for one on the sign-in page. However many processes run this, each
 * mail is sent once. Returns the number of mails sent.
 */
export const sendWelcomes = operation({
  name: 'send-welcomes',
  allow: 'system',
  input: z.object({}),
  run: async ({ data, now }) => {
    if (!mailIsSetUp()) return { letters: 0 };
    let letters = 0;
    for (let job = await data.roster.takeWelcome(now); job !== null; job = await data.roster.takeWelcome(now)) {
      try {
        letters += await write(data, z.parse(payloadSchema, JSON.parse(job.payload)), now);
        await data.roster.welcomeSent(job, now);
      } catch (error) {
        logError(error);
        if (job.attempts < mostTries)
          await data.roster.welcomeAgain(job, String(error), new Date(now.getTime() + anHour));
        else await data.roster.welcomeSent(job, now);
      }
    }
    return { letters };
  },
});

/** Nothing is written to who has a password by now, or has left the course. */
async function write(
  data: ScopedData,
  { userId, courseId, createdById, days }: z.infer<typeof payloadSchema>,
  now: Date,
): Promise<number> {
  const waiting = await data.roster.awaits({ userId, courseId });
  if (!waiting?.user) return 0;
  const { path, expiresAt } = await makePasswordLink(data, { userId, createdById, hours: days * 24 }, now);
  await sendMail(
    welcomeLetter({
      to: waiting.user.emailNorm,
      name: waiting.user.name,
      course: waiting.course.title,
      link: env().publicOrigin + path,
      expires: expiresAt.toISOString().slice(0, 10),
    }),
  );
  return 1;
}
