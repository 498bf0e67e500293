import { beforeAll, expect, it } from 'vitest';
import type { Caller } from '@/lib/access/caller';
import { addSection, removeSection } from '@/lib/course/sections';
import { allowCourseMaking, listPeople } from '@/lib/course/people';
import { changeSection, setAccommodations } from '@/lib/course/members';
import { createCourse, editCourse, getCourseSettings, timeZones } from '@/lib/course/courses';
import { listAuditEvents } from '@/lib/course/audit-events';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { addMember, addPerson } from '../../fixtures/people';

describeOnBothDatabases('courses', (suite) => {
  let instructor: Caller & { kind: 'person' };
  let courseId: string;
  beforeAll(async () => {
    instructor = (await addPerson(suite.db, { mayCreateCourses: true, name: 'The instructor' }))
      .caller as typeof instructor;
    courseId = (await createCourse(instructor, { title: ' Display   type ', timeZone: 'Europe/Lisbon' })).courseId;
  });

  it('whoever opens one teaches it', async () => {
    expect(await suite.db.course.findUniqueOrThrow({ where: { id: courseId } })).toMatchObject({
      title: 'Display type',
      timeZone: 'Europe/Lisbon',
      state: 'active',
    });
    expect(await suite.db.member.findFirstOrThrow({ where: { courseId } })).toMatchObject({
      userId: instructor.userId,
      role: 'instructor',
    });
  });

  // Names of the IANA time zone database; an offset is none, since it knows nothing of summer time.
  it.each(['Mars/Olympus', '+02:00', 'Lisbon', '', 'Europe/Lisbon; DROP'])(
    'refuses %j as a time zone and quotes it',
    async (timeZone) => {
      await expect(createCourse(instructor, { title: 'X', timeZone })).rejects.toMatchObject({
        code: 'INVALID',
        fields: { timeZone: expect.any(String) },
      });
    },
  );

  it('knows the zones of the whole world', () => {
    for (const zone of ['UTC', 'Europe/Lisbon', 'America/St_Johns', 'Asia/Kolkata', 'Pacific/Chatham']) {
      expect(
        timeZones().some((known) => known === zone || (zone === 'Asia/Kolkata' && known === 'Asia/Calcutta')),
      ).toBe(true);
    }
  });

  it('of two changes made from the same page, the second is told', async () => {
    const { version } = await suite.db.course.findUniqueOrThrow({ where: { id: courseId } });
    const change = (title: string) =>
      editCourse(instructor, {
        courseId,
        version,
        title,
        timeZone: 'Europe/Lisbon',
        retainUntil: null,
        figuresHidden: false,
      });
    const done = await Promise.allSettled([change('One'), change('Two')]);
    expect(done.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(done.find(({ status }) => status === 'rejected')).toMatchObject({ reason: { code: 'CONFLICT' } });
  });

  it('hides measured figures from students when it is told to, and keeps settings that it does not know', async () => {
    await suite.db.course.update({ where: { id: courseId }, data: { settings: '{"ofLater":1}' } });
    const { version, title } = await suite.db.course.findUniqueOrThrow({ where: { id: courseId } });
    expect((await getCourseSettings(instructor, { courseId })).settings).toEqual({ figuresHidden: false });
    await editCourse(instructor, {
      courseId,
      version,
      title,
      timeZone: 'Europe/Lisbon',
      retainUntil: null,
      figuresHidden: true,
    });
    expect((await getCourseSettings(instructor, { courseId })).settings).toEqual({ figuresHidden: true });
    const { settings } = await suite.db.course.findUniqueOrThrow({ where: { id: courseId } });
    expect(JSON.parse(settings)).toEqual({ ofLater: 1, figuresHidden: true });
  });

  it('has no two sections of one name; taking one away keeps its people', async () => {
    const added = await Promise.allSettled(
      Array.from({ length: 4 }, () => addSection(instructor, { courseId, name: 'Monday' })),
    );
    const [won] = added.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []));
    expect(added.filter(({ status }) => status === 'rejected')).toHaveLength(3);
    const student = await addPerson(suite.db);
    const memberId = await addMember(suite.db, courseId, student.id, 'student');
    await changeSection(instructor, { courseId, memberId, sectionId: won!.sectionId });
    await removeSection(instructor, { courseId, sectionId: won!.sectionId });
    expect(await suite.db.member.findUniqueOrThrow({ where: { id: memberId } })).toMatchObject({
      sectionId: null,
      removedAt: null,
    });
  });

  it('shows an assistant the extra time of a student and none of their needs, and writes no need into the log', async () => {
    const [assistant, student] = [await addPerson(suite.db), await addPerson(suite.db, { name: 'Ines' })];
    await addMember(suite.db, courseId, assistant.id, 'assistant');
    const memberId = await addMember(suite.db, courseId, student.id, 'student');
    await setAccommodations(instructor, { courseId, memberId, accommodations: { moreTime: 25, gapsSpoken: true } });
    const seenBy = async (caller: Caller) =>
      (await listPeople(caller, { courseId })).students.find(({ id }) => id === memberId)!.accommodations;
    expect(await seenBy(instructor)).toEqual({ moreTime: 25, gapsSpoken: true });
    expect(await seenBy(assistant.caller)).toEqual({ moreTime: 25 });
    const written = await suite.db.auditEvent.findFirstOrThrow({ where: { verb: 'accommodations changed' } });
    expect(written.details).toBe('{}');
    expect((await listAuditEvents(instructor, { courseId })).acts[0]).toMatchObject({
      verb: 'accommodations changed',
      who: 'The instructor',
      whom: 'Ines',
    });
  });

  it('opening courses is passed on to instructors only, by those who may', async () => {
    const [other, assistant] = [await addPerson(suite.db), await addPerson(suite.db)];
    const otherMember = await addMember(suite.db, courseId, other.id, 'instructor');
    const assistantMember = await addMember(suite.db, courseId, assistant.id, 'assistant');
    const may = async (id: string) => (await suite.db.user.findUniqueOrThrow({ where: { id } })).mayCreateCourses;
    await expect(
      allowCourseMaking(other.caller, { courseId, memberId: otherMember, allowed: true }),
    ).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await expect(
      allowCourseMaking(instructor, { courseId, memberId: assistantMember, allowed: true }),
    ).rejects.toMatchObject({ code: 'CONFLICT' });
    await expect(createCourse(other.caller, { title: 'X', timeZone: 'UTC' })).rejects.toMatchObject({
      code: 'NOT_FOUND',
    });
    await allowCourseMaking(instructor, { courseId, memberId: otherMember, allowed: true });
    expect([await may(other.id), await may(assistant.id)]).toEqual([true, false]);
    await createCourse(other.caller, { title: 'X', timeZone: 'UTC' });
  });
});
