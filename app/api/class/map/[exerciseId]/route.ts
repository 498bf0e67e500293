import { getMap } from '@/lib/class/map';
import { route } from '@/lib/http/route';

export const GET = route(getMap, {
  read: (request, { exerciseId }) => {
    const asked = new URL(request.url).searchParams;
    return { exerciseId, roundNumber: asked.get('round'), line: asked.get('line') };
  },
});
