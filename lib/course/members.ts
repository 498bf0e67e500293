import * as z from 'zod';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import type { AuditVerb } from '@/lib/data/audit';
import type { MemberChange, MemberRow } from '@/lib/data/members';
import { retryOnConflict, swapped } from '@/lib/data/retry';
import { accommodationsSchema, leadsCourse, roleSchema } from '@/shared/schemas/course';
import { canonicalJson } from '@/shared/text/canonical-json';
import { courseId, memberId, sectionId } from './courses';

/** Gives a member another role. Their work and what they wrote stay theirs. */
export const changeRole = operation({
  name: 'change-role',
  allow: 'member:manage',
  input: z.object({ courseId, memberId, role: roleSchema }),
  run: async ({ data, now }, { role, ...which }) => {
    await changeMember(
      data,
      { ...which, verb: 'role changed', make: (member) => (member.role === role ? null : { role }) },
      now,
    );
    return {};
  },
});

/** Moves a member to another section, or into none. */
export const changeSection = operation({
  name: 'change-section',
  allow: 'member:manage',
  input: z.object({ courseId, memberId, sectionId: z.nullable(sectionId) }),
  run: async ({ data, now }, { sectionId: section, ...which }) => {
    await changeMember(
      data,
      {
        ...which,
        verb: 'section changed',
        make: async (member, inside) => {
          if (section !== null && !(await inside.sections.byId(which.courseId, section))) throw notFound();
          return member.sectionId === section ? null : { sectionId: section };
        },
      },
      now,
    );
    return {};
  },
});

/** Sets what is different for one person: the whole of it, so that what is left out is as for everyone. */
export const setAccommodations = operation({
  name: 'set-accommodations',
  allow: 'member:manage',
  input: z.object({ courseId, memberId, accommodations: accommodationsSchema }),
  run: async ({ data, now }, { accommodations, ...which }) => {
    const written = canonicalJson(accommodations);
    await changeMember(
      data,
      {
        ...which,
        verb: 'accommodations changed',
        withoutValues: true,
        make: (member) => (member.accommodations === written ? null : { accommodations: written }),
      },
      now,
    );
    return {};
  },
});

/** Takes a person out of the course at once and ends their sessions. Their work stays, and they can be put back. */
export const removeMember = operation({
  name: 'remove-member',
  allow: 'member:manage',
  input: z.object({ courseId, memberId }),
  run: async ({ data, now }, which) => {
    await changeMember(
      data,
      {
        ...which,
        verb: 'member removed',
        make: async (member, inside) => {
          if (member.removedAt) return null;
          if (member.user) await inside.sessions.endAll(member.user.id, now);
          return { removedAt: now };
        },
      },
      now,
    );
    return {};
  },
});

/** Undoes a removal: the same membership, with all its work. */
export const restoreMember = operation({
  name: 'restore-member',
  allow: 'member:manage',
  input: z.object({ courseId, memberId }),
  run: async ({ data, now }, which) => {
    await changeMember(
      data,
      { ...which, verb: 'member put back', make: (member) => (member.removedAt ? { removedAt: null } : null) },
      now,
    );
    return {};
  },
});

type Change = {
  courseId: string;
  memberId: string;
  verb: AuditVerb;
  /** Leave the values out of the log: accommodations are stored only with the member. */
  withoutValues?: boolean;
  /** What to write, or null when the member is so already. */
  make: (member: MemberRow, data: ScopedData) => Promise<MemberChange | null> | MemberChange | null;
};

/**
 * Changes one member and writes down what was changed, in one transaction. A course keeps at least one instructor: a
 * change that takes one away also takes the course's version, so that two of them at the same moment can't both pass.
 */
function changeMember(
  data: ScopedData,
  { courseId: inCourse, memberId: id, verb, withoutValues, make }: Change,
  now: Date,
): Promise<MemberRow> {
  return retryOnConflict(() =>
    data.transaction(async (inside) => {
      const member = await inside.members.byId(inCourse, id);
      if (!member) throw notFound();
      const change = await make(member, inside);
      if (change === null) return member;
      if (stopsTeaching(member, change)) await keepAnInstructor(inside, inCourse);
      swapped(await inside.members.change(member.id, member.version, change), 'The member');
      await inside.audit.record(
        {
          courseId: inCourse,
          verb,
          subject: `member:${member.id}`,
          details: withoutValues ? {} : { before: valuesChanged(member, change), after: valuesChanged(change, change) },
        },
        now,
      );
      return member;
    }),
  );
}

/** @throws AppError CONFLICT when only one person teaches the course. */
async function keepAnInstructor(data: ScopedData, inCourse: string): Promise<void> {
  const course = await data.courses.byId(inCourse);
  if (!course) throw notFound();
  if ((await data.members.instructors(inCourse)) < 2) throw lastInstructor();
  swapped(await data.courses.takeVersion(inCourse, course.version), 'The course');
}

function stopsTeaching(member: MemberRow, change: MemberChange): boolean {
  if (!leadsCourse(member.role) || member.removedAt !== null) return false;
  return (change.role !== undefined && !leadsCourse(change.role)) || Boolean(change.removedAt);
}

/** Only the fields that change, instants as text. */
const valuesChanged = (from: Pick<MemberRow, keyof MemberChange> | MemberChange, change: MemberChange) =>
  Object.fromEntries(
    (Object.keys(change) as (keyof MemberChange)[]).map((field) => {
      const value = from[field];
      return [field, value instanceof Date ? value.toISOString() : value];
    }),
  );

const lastInstructor = () =>
  new AppError(
    'CONFLICT',
    'This is the only instructor of the course, and a course needs one. Make another member an instructor first.',
  );
