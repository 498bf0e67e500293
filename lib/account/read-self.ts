import * as z from 'zod';
import { operation } from '@/lib/access/operation';

/** Who is signed in, for the bar over every page; null for a visitor. */
export const readSelf = operation({
  name: 'read-self',
  allow: 'open',
  input: z.object({}),
  run: async ({ data, actor }) => {
    if (actor.kind !== 'person') return null;
    const name = await data.account.ownName();
    return name === null ? null : { name };
  },
});
