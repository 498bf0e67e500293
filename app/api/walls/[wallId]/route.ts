import { readJson } from '@/lib/http/read-json';
import { route } from '@/lib/http/route';
import { changeWall } from '@/lib/wall/change-wall';
import { showWall } from '@/lib/wall/show-wall';

/** For a page that cannot be told, and for one that misses what a line is drawn with. */
export const GET = route(showWall, { read: (_request, { wallId }) => ({ wallId }) });
export const PUT = route(changeWall, {
  read: async (request, { wallId }) => ({ change: await readJson(request), wallId }),
});
