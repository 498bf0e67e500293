import { AppError, notFound } from '@/lib/access/errors';
import type { ScopedData } from '@/lib/data';
import type { AuditVerb } from '@/lib/data/audit';
import { swapped } from '@/lib/data/compare-and-swap';
import type { MemberChange, MemberRow } from '@/lib/data/members';
import { retryOnConflict } from '@/lib/data/retry';

type Change = {
  courseId: string;
  memberId: string;
  verb: AuditVerb;
  /** Leave the values out of the log: needs are written down nowhere but with the member. */
  withoutValues?: boolean;
  /** What to write, or null when the member is so already. */
  make: (member: MemberRow, data: ScopedData) => Promise<MemberChange | null> | MemberChange | null;
};

/**
 * Changes one member and writes down what was changed, in one transaction. A course keeps at least one instructor: a
 * change that takes one away also takes the course's version, so that two of them at the same moment can't both pass.
 */
export function changeMember(
  data: ScopedData,
  { courseId, memberId, verb, withoutValues, make }: Change,
  now: Date,
): Promise<MemberRow> {
  return retryOnConflict(() =>
    data.transaction(async (inside) => {
      const member = await inside.members.byId(courseId, memberId);
      if (!member) throw notFound();
      const change = await make(member, inside);
      if (change === null) return member;
      if (stopsTeaching(member, change)) await keepAnInstructor(inside, courseId);
      swapped(await inside.members.change(member.id, member.version, change), 'The member');
      await inside.audit.record(
        {
          courseId,
          verb,
          subject: `member:${member.id}`,
          details: withoutValues ? {} : { before: told(member, change), after: told(change, change) },
        },
        now,
      );
      return member;
    }),
  );
}

/** @throws AppError CONFLICT when only one person teaches the course. */
export async function keepAnInstructor(data: ScopedData, courseId: string): Promise<void> {
  const course = await data.courses.byId(courseId);
  if (!course) throw notFound();
  if ((await data.members.instructors(courseId)) < 2) throw lastInstructor();
  swapped(await data.courses.takeVersion(courseId, course.version), 'The course');
}

function stopsTeaching(member: MemberRow, change: MemberChange): boolean {
  if (member.role !== 'instructor' || member.removedAt !== null) return false;
  return (change.role !== undefined && change.role !== 'instructor') || Boolean(change.removedAt);
}

/** Only the fields that change, instants as text. */
const told = (from: Pick<MemberRow, keyof MemberChange> | MemberChange, change: MemberChange) =>
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
