import { readJson, route } from '@/lib/http/route';
import { changeWall, getWall } from '@/lib/wall/screen';

/** For a page that receives no events, and for one that lacks the pack of a line. */
export const GET = route(getWall, { read: (_request, { wallId }) => ({ wallId }) });
export const PUT = route(changeWall, {
  read: async (request, { wallId }) => ({ change: await readJson(request), wallId }),
});
