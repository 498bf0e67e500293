import { Temporal } from 'temporal-polyfill';
import * as z from 'zod/mini';
import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { env } from '@/lib/env';
import { roundContext } from '@/lib/review/context';
import { leadsCourse, teaches } from '@/shared/schemas/course';
import { roundByNumber } from '@/shared/schemas/critique';
import { releaseSnapshotSchema } from '@/shared/schemas/release';
import { type RosterSet, zipSet } from './oneroster-tables';

/**
 * The released marks of a round for other systems: a OneRoster 1.2 set in one zip. Only released marks are results, as
 * they were released; so a set is the same for every reader, and reveals nothing of marking in progress.
 */
export const exportOneRoster = operation({
  name: 'export-oneroster',
  allow: 'marks:export',
  input: roundByNumber,
  run: async ({ data, now }, { exerciseId, roundNumber }) => {
    const { round, exercise, course, hidden } = await roundContext(data, exerciseId, roundNumber);
    // Marks beside names would show which alias in the other rounds is whose.
    if (hidden)
      throw new AppError(
        'CONFLICT',
        'Names are hidden in this exercise until every proof that was sent has been released. Release the rest, or show the names on the exercise’s plan; then export the marks.',
      );
    const [members, span, releases] = await Promise.all([
      data.exports.rosterOf(course.id),
      data.exports.spanOf(course.id),
      data.exports.newestReleases(round.id),
    ]);
    const people = members.flatMap(({ id, role, user }) =>
      user ? [{ memberId: id, userId: user.id, role, name: user.name, username: user.emailNorm }] : [],
    );
    const known = await data.exports.externalIds([
      'school',
      course.id,
      round.id,
      ...people.flatMap(({ memberId, userId }) => [memberId, userId]),
    ]);
    const dayOf = (at: Date): string => dayIn(course.timeZone, at);
    const lastDay = span.to && span.to > now ? span.to : now;
    const set = gradebookSet({
      school: new URL(env().publicOrigin).host,
      course,
      exercise,
      // The last day is outside the session: the standard's end is exclusive.
      session: { startDate: dayOf(span.from), endDate: dayAfter(dayOf(lastDay)) },
      round: {
        id: round.id,
        number: round.number,
        title: round.title,
        // A line item has one span: from when it opens for the first section until it is due for the last.
        assignDate: dayOf(
          extreme(Math.min, [round, ...round.sections], 'opensAt') ?? exercise.publishedAt ?? exercise.createdAt,
        ),
        dueDate: dayOf(extreme(Math.max, [round, ...round.sections], 'dueAt') ?? lastDay),
      },
      people,
      results: releases.map(({ memberId, releasedAt, snapshot }) => {
        const { total } = z.parse(releaseSnapshotSchema, JSON.parse(snapshot));
        return { memberId, score: total.after, day: dayOf(releasedAt), late: total.late !== null };
      }),
      externalId: (kind, localId) => known.get(`${kind} ${localId}`) ?? null,
    });
    await data.audit.record(
      {
        courseId: course.id,
        verb: 'marks exported',
        subject: `round:${round.id}`,
        details: { as: 'OneRoster 1.2', results: set.results.length },
      },
      now,
    );
    return {
      zip: zipSet(set, { name: 'Kerncrit', code: new URL(env().publicOrigin).host }, now),
      name: `oneroster-round-${round.number}.zip`,
    };
  },
});

const dayIn = (zone: string, at: Date): string =>
  Temporal.Instant.fromEpochMilliseconds(at.getTime()).toZonedDateTimeISO(zone).toPlainDate().toString();
const dayAfter = (day: string): string => Temporal.PlainDate.from(day).add({ days: 1 }).toString();

type Person = { memberId: string; userId: string; role: string; name: string; username: string };
/**
 * A total that went out; `score` in percent, null where not every criterion was marked. Dates are the course's own
 * days, 2027-03-08.
 */
type ReleasedResult = { memberId: string; score: number | null; day: string; late: boolean };
type Gradebook = {
  school: string;
  course: { id: string; title: string };
  session: { startDate: string; endDate: string };
  exercise: { id: string; title: string };
  round: { id: string; number: number; title: string; assignDate: string; dueDate: string };
  people: readonly Person[];
  results: readonly ReleasedResult[];
  /** What another system calls a row of ours. */
  externalId(kind: string, localId: string): string | null;
};

/**
 * The marks of one round as a OneRoster 1.2 set in bulk, with all that its references lead to. `status` and
 * `dateLastModified` are for sets of changes and stay empty in bulk, by the standard. Ids are the other system's where
 * we have them, else ours, which stay the same from one export to the next.
 */
function gradebookSet(book: Gradebook): RosterSet {
  const { course, exercise, round, people, externalId } = book;
  const id = (kind: string, localId: string, ours: string) => externalId(kind, localId) ?? ours;
  const org = id('org', 'school', 'school');
  const session = id('academicSession', course.id, `session-${course.id}`);
  const courseId = id('course', course.id, course.id);
  const classId = id('class', course.id, `class-${course.id}`);
  const category = id('category', course.id, `category-${course.id}`);
  const lineItem = id('lineItem', round.id, round.id);
  const user = ({ userId }: Person) => id('user', userId, userId);
  const byMember = new Map(people.map((person) => [person.memberId, person]));
  return {
    orgs: [{ sourcedId: org, name: book.school, type: 'school' }],
    academicSessions: [
      {
        sourcedId: session,
        title: course.title,
        type: 'term',
        ...book.session,
        schoolYear: book.session.endDate.slice(0, 4),
      },
    ],
    courses: [{ sourcedId: courseId, title: course.title, orgSourcedId: org }],
    classes: [
      {
        sourcedId: classId,
        title: course.title,
        courseSourcedId: courseId,
        classType: 'scheduled',
        schoolSourcedId: org,
        termSourcedIds: session,
      },
    ],
    users: people.map((person) => ({
      sourcedId: user(person),
      enabledUser: 'true',
      username: person.username,
      ...splitName(person.name),
      primaryOrgSourcedId: org,
    })),
    roles: people.map((person) => ({
      sourcedId: `role-${person.memberId}`,
      userSourcedId: user(person),
      roleType: 'primary',
      role: roleOf(person),
      orgSourcedId: org,
    })),
    enrollments: people.map((person) => ({
      sourcedId: id('enrollment', person.memberId, person.memberId),
      classSourcedId: classId,
      schoolSourcedId: org,
      userSourcedId: user(person),
      role: roleOf(person),
      primary: leadsCourse(person.role) ? 'true' : 'false',
    })),
    categories: [{ sourcedId: category, title: 'Spacing exercises' }],
    lineItems: [
      {
        sourcedId: lineItem,
        title: `${exercise.title}, round ${round.number}${round.title && `: ${round.title}`}`,
        assignDate: round.assignDate,
        dueDate: round.dueDate,
        classSourcedId: classId,
        categorySourcedId: category,
        academicSessionSourcedId: session,
        resultValueMin: 0,
        resultValueMax: 100,
        schoolSourcedId: org,
      },
    ],
    results: book.results.flatMap(({ memberId, score, day, late }) => {
      const person = byMember.get(memberId);
      // A member who has left the course is not in the set, and a result must not refer to a missing row.
      if (!person) return [];
      return [
        {
          sourcedId: `result-${round.id}-${memberId}`,
          lineItemSourcedId: lineItem,
          studentSourcedId: user(person),
          scoreStatus: score === null ? 'partially graded' : 'fully graded',
          score: score === null ? '' : Math.round(score * 100) / 100,
          scoreDate: day,
          classSourcedId: classId,
          inProgress: 'false',
          incomplete: score === null ? 'true' : 'false',
          late: late ? 'true' : 'false',
          missing: 'false',
        },
      ];
    }),
  };
}

/** The standard's enrolments have no assistant; our staff are teachers there. */
const roleOf = ({ role }: Person): string => (teaches(role) ? 'teacher' : 'student');

/**
 * A name in the two parts that the standard requires. We store names in one piece, as people write them; the last word
 * is taken for the family name, which is wrong for some, so the receiving system should keep its own. A name of one
 * word fills both parts, since neither may be empty.
 */
export function splitName(name: string): { givenName: string; familyName: string } {
  const words = name.trim().split(/\s+/);
  if (words.length === 1) return { givenName: words[0]!, familyName: words[0]! };
  return { givenName: words.slice(0, -1).join(' '), familyName: words.at(-1)! };
}

type Dates = { opensAt: Date | null; dueAt: Date | null };

/** The earliest or latest of these dates that is set; null where none is. */
function extreme(of: typeof Math.min, all: readonly Dates[], which: keyof Dates): Date | null {
  const set = all.flatMap((dates) => dates[which]?.getTime() ?? []);
  return set.length === 0 ? null : new Date(of(...set));
}
