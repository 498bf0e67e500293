import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import { recordsOf } from './records-of';

/** Everything that is kept about the person who is signed in. */
export const exportOwnData = operation({
  name: 'export-own-data',
  allow: 'account:own',
  input: z.object({}),
  run: ({ data, now }) => recordsOf(data, now),
});
