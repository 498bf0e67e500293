import { Temporal } from 'temporal-polyfill';
import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { CopiedCourse } from '@/lib/data/course-copy';
import { meantTime } from '@/lib/exercise/local-time';
import { lateRuleOf } from '@/lib/rows/exercise';
import { copyDatesSchema, courseTitleSchema } from '@/shared/schemas/course';
import type { LateRule } from '@/shared/schemas/exercise';
import { courseId } from './courses';

/**
 * Copies a course to the next term as a new one, without its people and their work: exercises as drafts, with their
 * present rounds, criteria and lines, shared stock notes, faces with their licence decisions. References and
 * demonstrations only if the person who copies made them: those of others were made for the old course.
 */
export const copyCourse = operation({
  name: 'copy-course',
  allow: 'course:run',
  input: z.object({ courseId, title: courseTitleSchema, ...copyDatesSchema }),
  run: async ({ data, actor, now }, { courseId: id, title, dates, days }) => {
    if (actor.kind !== 'person') throw notFound();
    const from = await data.courseCopy.read(id);
    if (!from) throw notFound();
    if (!(await data.account.mayMakeCourses()))
      throw new AppError(
        'CONFLICT',
        'A copy is a new course, and you may not open courses here. Ask an instructor who may, or the person who runs the server.',
      );
    return data.transaction(async (inside) => {
      const course = await inside.courses.make({ title, timeZone: from.timeZone, retainUntil: null }, now);
      const member = await inside.members.add(
        { courseId: course.id, userId: actor.userId, role: 'instructor', sectionId: null },
        now,
      );
      const into = { courseId: course.id, memberId: member.id, userId: actor.userId };
      await inside.courseCopy.settings(course.id, from.settings);
      for (const exercise of from.exercises) {
        const moved = new Map(
          exercise.rounds.map((round) => {
            const { remarks: _, ...when } = movedDates(round, dates === 'moved' ? days : null, from.timeZone);
            return [round.id, when];
          }),
        );
        await inside.courseCopy.exercise(exercise, moved, into, now);
      }
      await inside.courseCopy.rest(from, into, now);
      await inside.audit.record(
        { courseId: course.id, verb: 'course made', subject: `course:${course.id}`, details: { copiedFrom: id } },
        now,
      );
      await inside.audit.record({ courseId: id, verb: 'course copied', subject: `course:${course.id}` }, now);
      return { courseId: course.id };
    });
  },
});

/** What a copy of a course would hold, and when its rounds would be. Writes nothing. */
export const previewCopy = operation({
  name: 'preview-copy',
  allow: 'course:run',
  input: z.object({ courseId, ...copyDatesSchema }),
  run: async ({ data }, { courseId: id, dates, days }) => {
    const course = await data.courseCopy.read(id);
    if (!course) throw notFound();
    const versions = course.exercises.flatMap(({ specimens }) => specimens.flatMap((specimen) => specimen.versions));
    const references = versions.reduce((sum, version) => sum + version.references.length, 0);
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone, role: 'instructor' as const },
      mayMakeCourses: await data.account.mayMakeCourses(),
      exercises: course.exercises.map(({ title, rounds, specimens, criteria }) => ({
        title,
        lines: specimens.length,
        criteria: criteria.length,
        rounds: rounds.map((round) => {
          const { opensLocal, dueLocal, lateRule, remarks } = movedDates(
            round,
            dates === 'moved' ? days : null,
            course.timeZone,
          );
          return {
            number: round.number,
            title: round.title,
            before: { opens: round.opensLocal, due: round.dueLocal },
            after: { opens: opensLocal, due: dueLocal, until: lateRule.untilLocal },
            remarks,
          };
        }),
      })),
      references,
      othersReferences: versions.reduce((sum, version) => sum + version._count.references, 0) - references,
      demonstrations: versions.reduce((sum, version) => sum + version.demonstrations.length, 0),
      stockNotes: course.stockNotes.length,
      faces: course.faces.length,
    };
  },
});

type Round = CopiedCourse['exercises'][number]['rounds'][number];
type MovedRound = {
  opensLocal: string | null;
  opensAt: Date | null;
  dueLocal: string | null;
  dueAt: Date | null;
  lateRule: LateRule;
  remarks: string[];
};

/**
 * A round's dates moved by whole days on the calendar of the course's zone, so that 18:00 stays 18:00 over a change of
 * the clocks; or none at all (`days` null). A rule with a last date for late proofs loses it with the due date, and
 * takes them always.
 */
export function movedDates(round: Round, days: number | null, zone: string): MovedRound {
  const rule = lateRuleOf(round);
  if (days === null) {
    const lateRule =
      rule.accept === 'until' ? { ...rule, accept: 'always' as const, untilLocal: null, untilAt: null } : rule;
    return { opensLocal: null, opensAt: null, dueLocal: null, dueAt: null, lateRule, remarks: [] };
  }
  const moved = (local: string | null, use: 'opens' | 'due') =>
    local === null ? null : meantTime(later(local, days), zone, use);
  const [opens, due, until] = [
    moved(round.opensLocal, 'opens'),
    moved(round.dueLocal, 'due'),
    moved(rule.untilLocal, 'due'),
  ];
  return {
    opensLocal: opens?.local ?? null,
    opensAt: opens?.at ?? null,
    dueLocal: due?.local ?? null,
    dueAt: due?.at ?? null,
    lateRule: { ...rule, untilLocal: until?.local ?? null, untilAt: until?.at.toISOString() ?? null },
    remarks: [opens, due, until].flatMap((time) => time?.remark ?? []),
  };
}

const later = (local: string, days: number): string =>
  Temporal.PlainDateTime.from(local).add({ days }).toString({ smallestUnit: 'minute' });
