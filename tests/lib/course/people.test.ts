import { beforeAll, expect, it } from 'vitest';
import type { Caller } from '@/lib/access/caller';
import { changeName } from '@/lib/account/account';
import { createCourse } from '@/lib/course/courses';
import { eventsPerPage, listAuditEvents } from '@/lib/course/audit-events';
import { listPeople, peoplePerPage } from '@/lib/course/people';
import { newId } from '@/lib/data/ids';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { addMember, addPerson } from '../../fixtures/people';

describeOnBothDatabases('people of a course, a page at a time', (suite) => {
  let instructor: Caller & { kind: 'person' };
  let courseId: string;
  let last: Awaited<ReturnType<typeof addPerson>>;
  beforeAll(async () => {
    instructor = (await addPerson(suite.db, { mayCreateCourses: true, name: 'The instructor' }))
      .caller as typeof instructor;
    courseId = (await createCourse(instructor, { title: 'Display type', timeZone: 'Europe/Lisbon' })).courseId;
    for (let index = 0; index < peoplePerPage; index += 1)
      await addMember(
        suite.db,
        courseId,
        (await addPerson(suite.db, { name: `Student ${String(index).padStart(3, '0')}` })).id,
        'student',
      );
    last = await addPerson(suite.db, { name: 'Zoë Ångström', email: 'zoe@school.example' });
    await addMember(suite.db, courseId, last.id, 'student');
  });
  const ask = (input: { page?: number; find?: string } = {}) => listPeople(instructor, { courseId, ...input });

  it('come by name, those who teach apart', async () => {
    const [first, second] = [await ask(), await ask({ page: 2 })];
    expect(first).toMatchObject({ pages: 2, studentCount: peoplePerPage + 1, staff: [{ name: 'The instructor' }] });
    expect([first.students.length, first.students[0]!.name, second.students.map(({ name }) => name)]).toEqual([
      peoplePerPage,
      'Student 000',
      ['Zoë Ångström'],
    ]);
  });

  it('are found by part of a name, accents and capitals aside, or by the beginning of an address', async () => {
    for (const find of ['ANGSTR', 'zoë', ' zoe a', 'zoe@'])
      expect((await ask({ find })).students.map(({ name }) => name)).toEqual(['Zoë Ångström']);
    expect(await ask({ find: 'student 0' })).toMatchObject({ found: peoplePerPage, pages: 1 });
    for (const find of ['nobody', '%', 'school.example'])
      expect((await ask({ find })).found).toBe(find === '%' ? peoplePerPage + 1 : 0);
  });

  it('move in the list with their name', async () => {
    await changeName(last.caller, { name: 'Ädel Ångström' });
    expect((await ask()).students[0]!.name).toBe('Ädel Ångström');
    expect((await ask({ find: 'zoe' })).found).toBe(0);
  });

  it('and the log of acts is read from the newest back, without a hole', async () => {
    const acts = Array.from({ length: eventsPerPage + 10 }, (_, index) => ({
      id: newId(),
      courseId,
      verb: 'course changed',
      subject: `course:${courseId}`,
      at: new Date(Date.UTC(2027, 0, 1, 0, Math.floor(index / 2))),
    }));
    await suite.db.auditEvent.createMany({ data: acts });
    const seen: string[] = [];
    for (let before: string | null = null; ;) {
      const page: Awaited<ReturnType<typeof listAuditEvents>> = await listAuditEvents(instructor, { courseId, before });
      expect(page.acts.length).toBeLessThanOrEqual(eventsPerPage);
      seen.push(...page.acts.map(({ id }) => id));
      if (page.older === null) break;
      before = page.older;
    }
    expect(new Set(seen).size).toBe(seen.length);
    expect(acts.every(({ id }) => seen.includes(id))).toBe(true);
  });
});
