import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { copyDatesSchema } from '@/shared/schemas/course';
import { courseId } from '../ids';
import { movedDates } from './moved-dates';

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
