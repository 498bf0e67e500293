import { readJson, route } from '@/lib/http/route';
import { changeWall, getWall } from '@/lib/wall/screen';

/** For a page that cannot be told, and for one that misses what a line is drawn with. */
export const GET = route(getWall, { read: (_request, { wallId }) => ({ wallId }) });
export const PUT = route(changeWall, {
  read: async (request, { wallId }) => ({ change: await readJson(request), wallId }),
});
