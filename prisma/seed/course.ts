import { systemCaller, type Caller } from '@/lib/access/caller';
import { becomeFirstInstructor, createFirstLink } from '@/lib/account/first-instructor';
import { addSection } from '@/lib/course/sections';
import { createCourse } from '@/lib/course/courses';
import { joinWithNewAccount, createJoinLink } from '@/lib/course/join';
import { database } from '@/lib/data/client';
import { assistant, instructor, secondAssistant, students } from './people';

const day = 86_400_000;

const timeZone = 'Europe/Lisbon';

/**
 * The demo's course: one instructor, two assistants, sixteen students in two sections, all joined in the usual ways.
 */
export async function seedCourse(now: Date) {
  const begun = { now: new Date(now.getTime() - 49 * day) };
  const link = await createFirstLink(systemCaller('filling the demo'), {}, begun);
  if (!link) throw new Error('The demo needs a new database: this one has an instructor already.');
  await becomeFirstInstructor(visitor('instructor'), { ...instructor, token: tokenOf(link.path) }, begun);
  const instructorId = await userIdOf(instructor.email);
  const teaching = person(instructorId);

  const { courseId } = await createCourse(teaching, { title: 'Lettering for display, first term', timeZone }, begun);
  const monday = await addSection(teaching, { courseId, name: 'Monday bench' }, begun);
  const thursday = await addSection(teaching, { courseId, name: 'Thursday bench' }, begun);

  const join = async (
    who: { name: string; email: string; password: string; role: string },
    sectionId: string | null,
  ) => {
    const made = await createJoinLink(teaching, { courseId, role: who.role, sectionId, days: 14 }, begun);
    await joinWithNewAccount(visitor(who.email), { ...who, token: tokenOf(made.path) }, begun);
  };
  await join(assistant, null);
  await join(secondAssistant, null);
  for (const [index, student] of students.entries())
    await join(student, index % 2 === 0 ? monday.sectionId : thursday.sectionId);
  // Joining signs in; these sessions' secrets are thrown away.
  await database().authSession.deleteMany({});
  const studentIds = await Promise.all(students.map(({ email }) => userIdOf(email)));
  return {
    courseId,
    timeZone,
    instructorId,
    assistantId: await userIdOf(assistant.email),
    secondAssistantId: await userIdOf(secondAssistant.email),
    studentIds,
  };
}

async function userIdOf(emailNorm: string): Promise<string> {
  return (await database().user.findUniqueOrThrow({ where: { emailNorm }, select: { id: true } })).id;
}

const tokenOf = (path: string) => path.split('/').at(-1) ?? '';
const visitor = (address: string): Caller => ({ kind: 'visitor', address: `demo ${address}` });
const person = (userId: string): Caller => ({ kind: 'person', userId, sessionId: 'demo', address: 'demo' });
