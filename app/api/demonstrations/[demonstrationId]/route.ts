import { saveDemonstration } from '@/lib/work/demonstrations';
import { readJson, route } from '@/lib/http/route';

/** Stores what was recorded on the bench; sent again it is the same demonstration. */
export const PUT = route(saveDemonstration, {
  read: async (request, { demonstrationId }) => ({ ...(await readJson(request, 1024 * 1024)), demonstrationId }),
});
