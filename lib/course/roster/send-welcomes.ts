import { makePasswordLink } from '@/lib/account/make-password-link';
import type { ScopedData } from '@/lib/data';
import { env } from '@/lib/env';
import { logError } from '@/lib/http/log';
import { welcomeLetter } from '@/lib/mail/letters';
import { sendMail } from '@/lib/mail/send';

type For = { courseId: string; createdById: string; days: number };

/**
 * Writes to new people, one after the other, with a link to set their password. Not waited for: who does not get a letter
 * (a mistyped address, a mail server that refuses) asks for one themselves by “Forgotten?” on the sign-in page.
 */
export function sendWelcomes(data: ScopedData, emails: readonly string[], of: For, now: Date): void {
  void (async () => {
    const course = await data.courses.byId(of.courseId);
    for (const email of emails) {
      try {
        const person = await data.signIn.byEmail(email);
        if (!person || person.passwordHash !== null || !course) continue;
        const { path, expiresAt } = await makePasswordLink(data, { userId: person.id, createdById: of.createdById, hours: of.days * 24 }, now);
        await sendMail(welcomeLetter({ to: email, name: person.name, course: course.title, link: env().publicOrigin + path, expires: `${expiresAt.toISOString().slice(0, 10)}` }));
      } catch (error) {
        logError(error);
      }
    }
  })().catch(logError);
}
