import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import { readJson, route } from '@/lib/http/route';
import { personNameSchema } from '@/shared/schemas/account';

/** An equally authenticated write of exactly one row. */
const writeOneRow = operation({
  name: 'write-one-row',
  allow: 'account:own',
  input: z.object({ name: personNameSchema }),
  run: async ({ data }, { name }) => {
    await data.account.rename(name);
    return { name };
  },
});

/** In benchmarks only: autosave is compared with it. */
export const PUT = route(writeOneRow, { read: (request) => readJson(request) });
