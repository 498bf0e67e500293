import { readJson } from '@/lib/http/read-json';
import { json, route } from '@/lib/http/route';
import { point } from '@/lib/wall/point';
import { showPointing } from '@/lib/wall/show-pointing';

/** For phones, without signing in: the code is what opens it. */
export const GET = route(showPointing, {
  read: (_request, { code }) => ({ code }),
  respond: ({ packs, state }) => json({ packs, state }),
});
export const PUT = route(point, { read: async (request, { code }) => ({ ...(await readJson(request, 2_000)), code }) });
