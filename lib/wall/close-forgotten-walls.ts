import * as z from 'zod/mini';
import { operation } from '@/lib/access/operation';

/** Closes walls that were left open: where the room pointed is forgotten and what stood for whom. Says how many. */
export const closeForgottenWalls = operation({
  name: 'close-forgotten-walls',
  allow: 'system',
  input: z.object({}),
  run: async ({ data, now }) => ({ closed: await data.walls.closeForgotten(now) }),
});
