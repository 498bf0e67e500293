import * as z from 'zod';
import { parse } from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { makePasswordLink } from '@/lib/account/password-links';
import type { MemberRow } from '@/lib/data/members';
import { mailIsSetUp } from '@/lib/mail/send';
import { type Accommodations, accommodationsSchema, leadsCourse, roleSchema } from '@/shared/schemas/course';
import { findSchema, pageNumberSchema, pageOf } from '@/shared/schemas/page';
import { byName, courseId, memberId } from './courses';
import { recordOnPerson } from '@/lib/account/record-on-person';

/** Students on one page, and at most so many of those who were removed. */
export const peoplePerPage = 50;

/**
 * People of the course: those who teach it, a page of its students (of those whose name holds `find`), and who was
 * removed last.
 */
export const listPeople = operation({
  name: 'list-people',
  allow: 'member:see',
  input: z.object({ courseId, page: pageNumberSchema, find: findSchema }),
  run: async ({ data }, { page: asked, find, ...input }) => {
    const course = await data.courses.byId(input.courseId);
    const me = course?.members[0];
    if (!course || !me) throw notFound();
    const { all, found } = await data.members.countStudents(course.id, find);
    const { page, pages, from } = pageOf(asked, found, peoplePerPage);
    const [staff, students, removed, removedCount] = await Promise.all([
      data.members.staffOf(course.id),
      data.members.studentsOf(course.id, { find, skip: from, take: peoplePerPage }),
      data.members.removedFrom(course.id, peoplePerPage),
      data.members.countRemoved(course.id),
    ]);
    const view = (member: (typeof students)[number]) => memberView(member, me.role, course.sections);
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone, role: me.role, memberId: me.id },
      sections: course.sections.sort(byName).map(({ id, name }) => ({ id, name })),
      staff: staff.map(view).sort(byName),
      students: students.map(view),
      studentCount: all,
      found,
      find,
      page,
      pages,
      removed: removed.map(view),
      removedCount,
    };
  },
});

/** One person, for the page on which an instructor changes what they are in the course. */
export const getMember = operation({
  name: 'get-member',
  allow: 'member:manage',
  input: z.object({ courseId, memberId }),
  run: async ({ data, actor }, input) => {
    const course = await data.courses.byId(input.courseId);
    const member = await data.members.byId(input.courseId, input.memberId);
    if (!course || !member?.user) throw notFound();
    const self = actor.kind === 'person' && actor.userId === member.user.id;
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone, role: 'instructor' as const },
      sections: course.sections.sort(byName).map(({ id, name }) => ({ id, name })),
      person: memberView(member, 'instructor', course.sections),
      self,
      iMayLetMakeCourses: await data.account.mayMakeCourses(),
      passwordLink: await passwordLinkFor(member.user),
    };

    async function passwordLinkFor(user: { id: string; mayCreateCourses: boolean }) {
      if (self) return 'yourself' as const;
      if (mailIsSetUp()) return 'by mail' as const;
      if (user.mayCreateCourses || (await data.members.teachesSomewhere(user.id))) return 'teaches' as const;
      return (await data.members.isElsewhere(user.id)) ? ('elsewhere' as const) : ('can be made' as const);
    }
  },
});

/**
 * One person as staff see them. Accommodations reveal private needs: assistants see only what they must act on (extra
 * time), the instructor sees them all.
 */
export function memberView(member: MemberRow, seenBy: string, sections: readonly { id: string; name: string }[]) {
  const accommodations = readAccommodations(member.accommodations);
  return {
    id: member.id,
    name: member.user?.name ?? '',
    email: member.user?.emailNorm ?? '',
    role: parse(roleSchema, member.role),
    sectionId: member.sectionId,
    section: sections.find(({ id }) => id === member.sectionId)?.name ?? null,
    joinedAt: member.joinedAt,
    removedAt: member.removedAt,
    mayMakeCourses: member.user?.mayCreateCourses ?? false,
    accommodations: seenBy === 'instructor' ? accommodations : { moreTime: accommodations.moreTime },
  };
}

/** @throws ZodError when the stored text is not what was written: better a stop than a student's needs forgotten. */
function readAccommodations(stored: string): Accommodations {
  return parse(accommodationsSchema, JSON.parse(stored));
}

/**
 * A link for a new password that an instructor gives to a student or assistant in person, where no mail is set up. Its
 * holder can sign in as that person: so it is never made for instructors, nor for a person who is or was in a course
 * that this instructor does not run, and it is logged in all courses of the person.
 */
export const createMemberPasswordLink = operation({
  name: 'create-member-password-link',
  allow: 'member:manage',
  input: z.object({ courseId, memberId }),
  run: async ({ data, actor, now }, input) => {
    const member = await data.members.byId(input.courseId, input.memberId);
    if (actor.kind !== 'person' || !member?.user || member.removedAt) throw notFound();
    const { id, name, mayCreateCourses } = member.user;
    if (mailIsSetUp()) throw byMail();
    if (mayCreateCourses || (await data.members.teachesSomewhere(id))) throw teaches(name);
    if (await data.members.isElsewhere(id)) throw elsewhere(name);
    const { path, expiresAt } = await makePasswordLink(data, { userId: id, createdById: actor.userId, hours: 24 }, now);
    await recordOnPerson(data, id, { verb: 'password link handed over' }, now);
    return { path, name, expiresAt };
  },
});

const byMail = () =>
  new AppError(
    'CONFLICT',
    'Mail is set up here, so this link is not handed over: “Forgotten your password?” on the sign-in page sends it to the person.',
  );
const elsewhere = (name: string) =>
  new AppError(
    'CONFLICT',
    `${name} is or was in a course that you do not run, so you can't make this link. The person who runs the server can create one at its console.`,
  );
const teaches = (name: string) =>
  new AppError(
    'CONFLICT',
    `${name} teaches, so you can’t create this link. The person who runs the server can create one at its console.`,
  );

/** Lets another instructor of one's course open courses too, or no longer. Only who may do so can pass it on. */
export const allowCourseMaking = operation({
  name: 'allow-course-making',
  allow: 'member:manage',
  input: z.object({ courseId, memberId, allowed: z.boolean() }),
  run: async ({ data, actor, now }, { allowed, ...which }) => {
    const member = await data.members.byId(which.courseId, which.memberId);
    if (actor.kind !== 'person' || !member?.user || member.removedAt) throw notFound();
    if (!(await data.account.mayMakeCourses())) throw notFound();
    if (member.user.id === actor.userId)
      throw new AppError(
        'CONFLICT',
        'You can’t change this for yourself, so that there is always a person who can open courses.',
      );
    if (allowed && !leadsCourse(member.role))
      throw new AppError('CONFLICT', `${member.user.name} is not an instructor of this course. Change the role first.`);
    const { id } = member.user;
    await data.transaction(async (inside) => {
      if ((await inside.members.setCourseMaking(which.courseId, which.memberId, allowed)).count !== 1) throw notFound();
      await recordOnPerson(inside, id, { verb: allowed ? 'course making allowed' : 'course making withdrawn' }, now);
    });
    return {};
  },
});
