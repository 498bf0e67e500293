import * as z from 'zod/mini';
import { operation } from '@/lib/access/operation';
import { rosterColumnsSchema, rosterTextSchema } from '@/shared/schemas/roster';
import { courseId } from '../ids';
import { planRoster } from './plan-roster';

/** What a roster would do, before anything is written. */
export const previewRoster = operation({
  name: 'preview-roster',
  allow: 'member:manage',
  input: z.object({ courseId, text: rosterTextSchema, columns: rosterColumnsSchema }),
  run: ({ data }, given) => planRoster(data, given),
});
