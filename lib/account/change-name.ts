import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import { personNameSchema } from '@/shared/schemas/account';

export const changeName = operation({
  name: 'change-name',
  allow: 'account:own',
  input: z.object({ name: personNameSchema }),
  run: async ({ data }, { name }) => {
    await data.transaction(async (inside) => {
      await inside.account.rename(name);
      await inside.account.relist(name);
    });
    return { name };
  },
});
