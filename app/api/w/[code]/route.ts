import { json, readJson, route } from '@/lib/http/route';
import { point, getPointing } from '@/lib/wall/pointing';

/** For phones, without signing in: the code is what opens it. */
export const GET = route(getPointing, {
  read: (_request, { code }) => ({ code }),
  respond: ({ packs, state }) => json({ packs, state }),
});
export const PUT = route(point, { read: async (request, { code }) => ({ ...(await readJson(request, 2_000)), code }) });
