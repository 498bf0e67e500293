import * as z from 'zod';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { changedCourseSettings, courseSettingsOf } from '@/lib/rows/course';
import { courseTitleSchema, localDaySchema, timeZoneSchema } from '@/shared/schemas/course';

/** Ids come from addresses: an impossible id gets the same answer as an unknown one. */
const recordId = z.string().min(1).max(64);

export const courseId = recordId;
export const memberId = recordId;
export const sectionId = recordId;
export const joinLinkId = recordId;

/** Opens a course; the person who opens it becomes its instructor. */
export const createCourse = operation({
  name: 'create-course',
  allow: 'course:make',
  input: z.object({ title: courseTitleSchema, timeZone: timeZoneSchema }),
  run: ({ data, actor, now }, { title, timeZone }) => {
    if (actor.kind !== 'person') throw notFound();
    const { userId } = actor;
    const settled = { title, timeZone: checkedTimeZone(timeZone), retainUntil: null };
    return data.transaction(async (inside) => {
      const course = await inside.courses.make(settled, now);
      await inside.members.add({ courseId: course.id, userId, role: 'instructor', sectionId: null }, now);
      await inside.audit.record({ courseId: course.id, verb: 'course made', subject: `course:${course.id}` }, now);
      return { courseId: course.id };
    });
  },
});

/** The person's own courses: the present ones first, newest first. */
export const listCourses = operation({
  name: 'list-courses',
  allow: 'course:see',
  input: z.object({}),
  run: async ({ data }) => {
    const courses = await data.courses.own();
    const mayMakeCourses = await data.account.mayMakeCourses();
    return {
      mayMakeCourses,
      courses: courses
        .sort(
          (a, b) =>
            Number(a.state === 'archived') - Number(b.state === 'archived') ||
            b.createdAt.getTime() - a.createdAt.getTime(),
        )
        .flatMap(({ id, title, timeZone, state, members: [member] }) =>
          member
            ? [
                {
                  id,
                  title,
                  timeZone,
                  archived: state === 'archived',
                  role: member.role,
                  section: member.section?.name ?? null,
                },
              ]
            : [],
        ),
    };
  },
});

/** What every page of a course shows at the top: its title, its zone, and the reader's role. */
export const getCourse = operation({
  name: 'get-course',
  allow: 'course:see',
  input: z.object({ courseId }),
  run: async ({ data }, input) => {
    const course = await data.courses.byId(input.courseId);
    const member = course?.members[0];
    if (!course || !member) throw notFound();
    return {
      id: course.id,
      title: course.title,
      timeZone: course.timeZone,
      archived: course.state === 'archived',
      retainUntil: course.retainUntil,
      version: course.version,
      role: member.role,
      memberId: member.id,
      sections: course.sections.sort(byName).map(({ id, name }) => ({ id, name })),
    };
  },
});

/** What an instructor may change about a course as a whole. */
export const getCourseSettings = operation({
  name: 'get-course-settings',
  allow: 'course:run',
  input: z.object({ courseId }),
  run: async ({ data }, input) => {
    const course = await data.courses.byId(input.courseId);
    if (!course) throw notFound();
    const { id, title, timeZone, retainUntil, version, sections } = course;
    return {
      course: { id, title, timeZone, retainUntil, version, role: 'instructor' as const },
      settings: courseSettingsOf(course),
      sections: sections.sort(byName).map((section) => ({ id: section.id, name: section.name })),
      timeZones: timeZones(),
    };
  },
});

/**
 * Changes title, time zone, last day of retention, or whether students see measured figures. `version` is the one the
 * form was made from.
 */
export const editCourse = operation({
  name: 'edit-course',
  allow: 'course:run',
  input: z.object({
    courseId,
    version: z.coerce.number().int(),
    title: courseTitleSchema,
    timeZone: timeZoneSchema,
    retainUntil: z.nullable(localDaySchema),
    figuresHidden: z.boolean(),
  }),
  run: async ({ data, now }, { courseId: id, version, title, timeZone, retainUntil, figuresHidden }) => {
    const before = await data.courses.byId(id);
    if (!before) throw notFound();
    const after = { title, timeZone: checkedTimeZone(timeZone), retainUntil };
    const settings = changedCourseSettings(before, { figuresHidden });
    await data.transaction(async (inside) => {
      if ((await inside.courses.change(id, version, { ...after, settings })).count !== 1) throw changedMeanwhile();
      const details = {
        before: {
          title: before.title,
          timeZone: before.timeZone,
          retainUntil: before.retainUntil,
          ...courseSettingsOf(before),
        },
        after: { ...after, figuresHidden },
      };
      await inside.audit.record({ courseId: id, verb: 'course changed', subject: `course:${id}`, details }, now);
    });
    return { courseId: id };
  },
});

const changedMeanwhile = () =>
  new AppError(
    'CONFLICT',
    'Another person changed this course meanwhile, so your changes are not saved yet. Open the page again beside this one, look at what changed, and send yours again.',
  );

/** What the form for a new course offers: the zones, and the one of the person's latest course. */
export const getNewCourseOptions = operation({
  name: 'get-new-course-options',
  allow: 'course:make',
  input: z.object({}),
  run: async ({ data }) => ({ timeZones: timeZones(), suggested: await data.account.latestTimeZone() }),
});

/** The zones of the IANA database that this server's Intl knows, UTC among them, in alphabetical order. */
export function timeZones(): string[] {
  return [...new Set(['UTC', ...Intl.supportedValuesOf('timeZone')])].sort();
}

/** @throws AppError INVALID that quotes a zone which does not exist. Gives the zone in its usual spelling. */
function checkedTimeZone(zone: string): string {
  try {
    const known = new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone;
    // Offsets such as +02:00 are accepted by Intl, but know nothing of summer time.
    if (/^[A-Z]/i.test(zone)) return timeZones().includes(zone) ? zone : known;
  } catch {
    // Reported below.
  }
  const message = `“${zone.slice(0, 40)}” is not a time zone. Choose one from the list, for example Europe/Lisbon.`;
  throw new AppError('INVALID', message, { fields: { timeZone: message } });
}

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** By name, as a list of people is read; figures by their value (Section 2 before Section 10). */
export const byName = (a: { name: string }, b: { name: string }): number => collator.compare(a.name, b.name);
