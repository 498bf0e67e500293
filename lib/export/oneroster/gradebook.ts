import { splitName } from './split-name';
import type { RosterSet } from './tables';

export type Person = { memberId: string; userId: string; role: string; name: string; username: string };
/** A total that went out; `score` in percent, null where not every criterion was marked. Dates are the course's own days, 2027-03-08. */
export type ReleasedResult = { memberId: string; score: number | null; day: string; late: boolean };
export type Gradebook = {
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
 * `dateLastModified` are for sets of changes and stay empty in bulk, as the standard has it.
 * Ids are the other system's where it told us its own, else ours, which stay the same from one export to the next.
 */
export function gradebookSet(book: Gradebook): RosterSet {
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
      primary: person.role === 'instructor' ? 'true' : 'false',
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
      // Somebody who has left the course is not in the set, and a result must not lead nowhere.
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

/** The standard's enrolments know no assistant; whoever teaches with us is a teacher there. */
const roleOf = ({ role }: Person): string => (role === 'student' ? 'student' : 'teacher');
