import { json, readJson, route } from '@/lib/http/route';
import { point, getPointing } from '@/lib/wall/pointing';

/** For phones that are not signed in: the code gives access. */
export const GET = route(getPointing, {
  read: (_request, { code }) => ({ code }),
  respond: ({ packs, state }) => json({ packs, state }),
});
export const PUT = route(point, { read: async (request, { code }) => ({ ...(await readJson(request, 2_000)), code }) });
