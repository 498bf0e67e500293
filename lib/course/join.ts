import * as z from 'zod';
import { parse } from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { hashPassword, refuseWeak } from '@/lib/account/password';
import { openSession } from '@/lib/account/sessions';
import { addressTaken, hashToken, linkIsOver, newToken } from '@/lib/account/token';
import { addressOf, countTry } from '@/lib/account/tries';
import type { ScopedData } from '@/lib/data';
import { isTaken, retryOnConflict } from '@/lib/data/retry';
import { linkTokenSchema, newAccountSchema } from '@/shared/schemas/account';
import { joinLinkDaysSchema, type Role, roleSchema, teaches } from '@/shared/schemas/course';
import { courseId, joinLinkId, sectionId } from './courses';

/** A link for an instructor can do much harm in the wrong hands, so it expires earlier than a student's. */
const longestForStaff = 14;

/** Makes a link by which people join with one role. It can be read only now: the database keeps its hash. */
export const createJoinLink = operation({
  name: 'create-join-link',
  allow: 'member:manage',
  input: z.object({ courseId, role: roleSchema, sectionId: z.nullable(sectionId), days: joinLinkDaysSchema }),
  run: async ({ data, actor, now }, { courseId: course, role, sectionId: section, days }) => {
    if (actor.kind !== 'person' || !(await data.courses.byId(course))) throw notFound();
    if (section !== null && !(await data.sections.byId(course, section))) throw notFound();
    if (teaches(role) && days > longestForStaff) throw tooLong(role, days);
    const token = newToken();
    const expiresAt = new Date(now.getTime() + days * 24 * 60 * 60 * 1000);
    await data.transaction(async (inside) => {
      const link = await inside.joinLinks.make(
        {
          courseId: course,
          tokenHash: hashToken(token),
          role,
          sectionId: section,
          createdById: actor.userId,
          expiresAt,
        },
        now,
      );
      await inside.audit.record(
        {
          courseId: course,
          verb: 'join link made',
          subject: `join-link:${link.id}`,
          details: { role, sectionId: section, expiresAt: expiresAt.toISOString() },
        },
        now,
      );
    });
    return { path: `/join/${token}`, role, expiresAt };
  },
});

function tooLong(role: string, days: number): AppError {
  const message = `A link for the role ${role} works for at most ${longestForStaff} days (given: ${days}): it opens the work of the whole course.`;
  return new AppError('INVALID', message, { fields: { days: message } });
}

/** The links that still let people in, the next to run out first. The links themselves can't be shown again. */
export const listJoinLinks = operation({
  name: 'list-join-links',
  allow: 'member:manage',
  input: z.object({ courseId }),
  run: async ({ data, now }, input) => {
    if (!(await data.courses.byId(input.courseId))) throw notFound();
    const links = await data.joinLinks.ofCourse(input.courseId, now);
    return links
      .sort((a, b) => a.expiresAt.getTime() - b.expiresAt.getTime())
      .map(({ id, role, section, createdAt, createdBy, expiresAt }) => ({
        id,
        role,
        section: section?.name ?? null,
        createdAt,
        madeBy: createdBy?.name || null,
        expiresAt,
      }));
  },
});

/** Ends a join link. Members who joined by it stay. */
export const revokeJoinLink = operation({
  name: 'revoke-join-link',
  allow: 'member:manage',
  input: z.object({ courseId, joinLinkId }),
  run: async ({ data, now }, { courseId: course, joinLinkId: link }) => {
    await data.transaction(async (inside) => {
      if ((await inside.joinLinks.revoke(course, link, now)).count !== 1) throw notFound();
      await inside.audit.record({ courseId: course, verb: 'join link revoked', subject: `join-link:${link}` }, now);
    });
    return {};
  },
});

/** Where a join link leads. A link that has run out or was taken back is not there. */
export const getJoinLink = operation({
  name: 'get-join-link',
  allow: 'open',
  input: z.object({ token: linkTokenSchema }),
  run: async ({ data, caller, now }, { token }) => {
    await countTry(data, 'link-address', addressOf(caller));
    const link = await data.joinLinks.byToken(hashToken(token), now);
    if (!link) throw notFound();
    // A class opens this page at the same moment from one address: only guessing is counted.
    await data.rateLimits.giveBack('link-address', addressOf(caller));
    return {
      title: link.course.title,
      timeZone: link.course.timeZone,
      role: link.role,
      section: link.section?.name ?? null,
      expiresAt: link.expiresAt,
    };
  },
});

/**
 * Joins by a link, with the signed-in account. Existing members stay as they are: a link changes no role. A removed
 * member is not let in again by it.
 */
export const joinCourse = operation({
  name: 'join-course',
  allow: 'account:own',
  input: z.object({ token: linkTokenSchema }),
  run: ({ data, actor, now }, { token }) => {
    if (actor.kind !== 'person') throw notFound();
    const { userId } = actor;
    return retryOnConflict(() =>
      data.transaction(async (inside) => {
        const link = await inside.joinLinks.byToken(hashToken(token), now);
        if (!link) throw linkIsOver();
        const member = await inside.members.ownIn(link.courseId, userId);
        if (member?.removedAt) throw wasRemoved();
        if (!member) {
          await addMember(inside, link, userId, now);
          // An instructor who ran all courses of this person, and may not run this one, has given them a link for a new
          // password.
          await inside.oneTimeLinks.voidEarlier('reset-password', userId, now);
        }
        return { courseId: link.courseId };
      }),
    );
  },
});

const wasRemoved = () =>
  new AppError(
    'CONFLICT',
    'You were in this course and have been removed from it, so this link does not let you in. Ask its instructor, who can restore you with all your work.',
  );

/** Makes an account, joins the course of the link with it, and signs in: all or nothing. */
export const joinWithNewAccount = operation({
  name: 'join-with-new-account',
  allow: 'open',
  input: z.object({ token: linkTokenSchema, ...newAccountSchema.shape }),
  run: async ({ data, caller, now }, { token, name, email, password }) => {
    await countTry(data, 'new-account-address', addressOf(caller));
    if (!(await data.joinLinks.byToken(hashToken(token), now))) throw linkIsOver();
    refuseWeak(password, name, email);
    const passwordHash = await hashPassword(password);
    try {
      return await data.transaction(async (inside) => {
        const link = await inside.joinLinks.byToken(hashToken(token), now);
        if (!link) throw linkIsOver();
        const person = await inside.signIn.makePerson({ emailNorm: email, name, passwordHash }, now);
        await addMember(inside, link, person.id, now);
        return { courseId: link.courseId, ...(await openSession(inside, person.id, now)) };
      });
    } catch (error) {
      throw isTaken(error) ? addressTaken() : error;
    }
  },
});

type Into = { id: string; courseId: string; role: string; sectionId: string | null };

/** Puts a person into a course as a join link says, and writes it down. @throws P2002 when they are in it already. */
async function addMember(data: ScopedData, link: Into, userId: string, now: Date): Promise<void> {
  const role: Role = parse(roleSchema, link.role);
  const member = await data.members.add({ courseId: link.courseId, userId, role, sectionId: link.sectionId }, now);
  await data.audit.record(
    {
      courseId: link.courseId,
      verb: 'member joined',
      subject: `member:${member.id}`,
      details: { role, sectionId: link.sectionId, joinLink: link.id },
    },
    now,
    userId,
  );
}
