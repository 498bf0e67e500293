import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { hashToken, newToken } from '@/lib/account/token';
import type { ScopedData } from '@/lib/data';
import { systemCaller } from '@/lib/access/caller';
import { retryOnConflict } from '@/lib/data/retry';
import { env } from '@/lib/env';
import { logError } from '@/lib/log';
import { mailIsSetUp } from '@/lib/mail/send';
import { rosterColumnsSchema, type RosterLink, type RosterRow, rosterTextSchema } from '@/shared/schemas/roster';
import { counted } from '@/shared/text/number';
import { courseId } from './courses';
import { keyOf, planRoster } from './roster-plan';
import { sendWelcomes } from './welcomes';

/** For how long a new person's link works. */
const linkDays = 14;

/**
 * Adds the people of a roster to the course: all of them or none. Existing members stay as they are, so the same roster
 * again changes nothing. New people have no password; they set one by a link, which is mailed to them, or, without
 * mail, returned to be passed on (shown once; the database has only its hash).
 *
 * People with an account are invited and not added: an address on a list does not prove who owns the account. They get
 * a join link, and are in the course once they open it, signed in, and accept.
 */
export const importRoster = operation({
  name: 'import-roster',
  allow: 'member:manage',
  input: z.object({ courseId, text: rosterTextSchema, columns: rosterColumnsSchema, makeSections: z.boolean() }),
  run: async ({ data, actor, now }, { makeSections, ...given }) => {
    if (actor.kind !== 'person') throw notFound();
    const byMail = mailIsSetUp();
    const expiresAt = new Date(now.getTime() + linkDays * 86_400_000);
    // Read, planned and written in one transaction; if another request was quicker a unique key fails, and everything
    // is planned anew.
    const { plan, links, invitations } = await retryOnConflict(() =>
      data.transaction(async (inside) => {
        const made = await planRoster(inside, given);
        refuseFaults(made);
        if (made.newSections.length > 0 && !makeSections)
          throw new AppError('INVALID', 'Nothing was imported.', {
            fields: {
              makeSections: `The roster names ${counted(made.newSections.length, 'section')} that the course does not have: ${made.newSections.join(', ')}. Tick that they are to be made.`,
            },
          });
        const coming = made.rows.filter(({ becomes }) => becomes === 'new person' || becomes === 'invited');
        if (coming.length === 0) return { plan: made, links: [], invitations: [] };
        await inside.roster.addSections(given.courseId, made.newSections, now);
        const sections = new Map(
          (await inside.courses.byId(given.courseId))!.sections.map(({ id, name }) => [keyOf(name), id]),
        );
        const fresh = coming
          .filter(({ becomes }) => becomes === 'new person')
          .map(({ email, name }) => ({ email, name, token: newToken() }));
        await inside.roster.addPeople(
          fresh.map(({ email, name, token }) => ({
            emailNorm: email,
            name,
            tokenHash: byMail ? null : hashToken(token),
          })),
          { createdById: actor.userId, expiresAt },
          now,
        );
        const members = await inside.roster.addMembers(
          given.courseId,
          coming
            .filter(({ becomes }) => becomes === 'new person')
            .map((row) => ({ email: row.email, ...partOf(row, sections) })),
          now,
        );
        const invited = coming.filter(({ becomes }) => becomes === 'invited');
        const joinAddress = await makeJoinLinks(
          inside,
          { courseId: given.courseId, createdById: actor.userId, expiresAt },
          invited.map((row) => partOf(row, sections)),
          now,
        );
        await inside.audit.recordAll(
          members.map(({ id, role, sectionId }) => ({
            courseId: given.courseId,
            verb: 'member joined' as const,
            subject: `member:${id}` as const,
            details: { role, sectionId, by: 'roster' },
          })),
          now,
        );
        await inside.audit.record(
          {
            courseId: given.courseId,
            verb: 'people imported',
            subject: `course:${given.courseId}`,
            details: { accounts: fresh.length, invited: invited.length, sections: made.newSections },
          },
          now,
        );
        if (byMail)
          await inside.roster.planWelcomes(
            fresh.map(({ email }) => email),
            { courseId: given.courseId, createdById: actor.userId, days: linkDays },
            now,
          );
        return {
          plan: made,
          links: fresh.map(({ name, email, token }): RosterLink => ({
            name,
            email,
            address: `${env().publicOrigin}/reset/${token}`,
          })),
          invitations: invited.map((row): RosterLink => ({
            name: row.name || row.email,
            email: row.email,
            address: joinAddress(partOf(row, sections)),
          })),
        };
      }),
    );
    // Not waited for: what fails now is tried again with the server's other chores.
    if (byMail && links.length > 0) void sendWelcomes(systemCaller('letters to new people'), {}).catch(logError);
    return {
      counts: plan.counts,
      newSections: plan.newSections,
      byMail,
      expiresAt,
      links: byMail ? [] : links,
      invitations,
    };
  },
});

type Part = { role: 'assistant' | 'student'; sectionId: string | null };

const partOf = ({ role, section }: RosterRow, sections: ReadonlyMap<string, string>): Part => ({
  role: role === 'assistant' ? 'assistant' : 'student',
  sectionId: sections.get(keyOf(section)) ?? null,
});

/** One join link for each role and section in the invitations. @returns the address for a part */
async function makeJoinLinks(
  data: ScopedData,
  of: { courseId: string; createdById: string; expiresAt: Date },
  parts: readonly Part[],
  now: Date,
): Promise<(part: Part) => string> {
  const addresses = new Map<string, string>();
  for (const part of parts) {
    const key = JSON.stringify([part.role, part.sectionId]);
    if (addresses.has(key)) continue;
    const token = newToken();
    const link = await data.joinLinks.make({ ...of, ...part, tokenHash: hashToken(token) }, now);
    await data.audit.record(
      {
        courseId: of.courseId,
        verb: 'join link made',
        subject: `join-link:${link.id}`,
        details: { ...part, expiresAt: of.expiresAt.toISOString() },
      },
      now,
    );
    addresses.set(key, `${env().publicOrigin}/join/${token}`);
  }
  return ({ role, sectionId }) => addresses.get(JSON.stringify([role, sectionId]))!;
}

function refuseFaults({ unclear, rows }: Awaited<ReturnType<typeof planRoster>>): void {
  const faults = rows.filter(({ becomes }) => becomes === 'fault');
  if (unclear === null && faults.length === 0) return;
  const message =
    unclear ??
    faults
      .slice(0, 10)
      .map(({ line, says }) => `Line ${line}: ${says.join(' ')}`)
      .join(' ');
  throw new AppError('INVALID', 'Nothing was imported.', {
    fields: { text: `${message}${faults.length > 10 ? ` And ${faults.length - 10} more.` : ''}` },
  });
}

/** What a roster would do, before anything is written. */
export const previewRoster = operation({
  name: 'preview-roster',
  allow: 'member:manage',
  input: z.object({ courseId, text: rosterTextSchema, columns: rosterColumnsSchema }),
  run: ({ data }, given) => planRoster(data, given),
});

/** The head of a roster's page: the course, and how new people will get their links. */
export const getRosterOptions = operation({
  name: 'get-roster-options',
  allow: 'member:manage',
  input: z.object({ courseId }),
  run: async ({ data }, input) => {
    const course = await data.courses.byId(input.courseId);
    if (!course) throw notFound();
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone, role: 'instructor' as const },
      byMail: mailIsSetUp(),
    };
  },
});
