import * as z from 'zod';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { courseTitleSchema, localDaySchema, timeZoneSchema } from '@/shared/schemas/course';
import { courseId } from './ids';
import { checkedTimeZone } from './time-zones';

/** Changes title, time zone or the day until which work is kept. `version` is the one the form was made from. */
export const editCourse = operation({
  name: 'edit-course',
  allow: 'course:run',
  input: z.object({
    courseId,
    version: z.coerce.number().int(),
    title: courseTitleSchema,
    timeZone: timeZoneSchema,
    retainUntil: z.nullable(localDaySchema),
  }),
  run: async ({ data, now }, { courseId: id, version, title, timeZone, retainUntil }) => {
    const before = await data.courses.byId(id);
    if (!before) throw notFound();
    const after = { title, timeZone: checkedTimeZone(timeZone), retainUntil };
    await data.transaction(async (inside) => {
      if ((await inside.courses.change(id, version, after)).count !== 1) throw changedMeanwhile();
      const details = {
        before: { title: before.title, timeZone: before.timeZone, retainUntil: before.retainUntil },
        after,
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
