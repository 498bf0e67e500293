import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import { timeZones } from './time-zones';

/** What the form for a new course offers: the zones, and the one of the person's latest course. */
export const prepareCourse = operation({
  name: 'prepare-course',
  allow: 'course:make',
  input: z.object({}),
  run: async ({ data }) => ({ timeZones: timeZones(), suggested: await data.account.latestTimeZone() }),
});
