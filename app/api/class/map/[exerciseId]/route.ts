import { getMap } from '@/lib/class/map';
import { inParts, jsonParts } from '@/lib/http/in-parts';
import { route } from '@/lib/http/route';

export const GET = route(getMap, {
  read: (request, { exerciseId }) => {
    const asked = new URL(request.url).searchParams;
    return { exerciseId, roundNumber: asked.get('round'), line: asked.get('line') };
  },
  respond: (map) =>
    new Response(inParts(jsonParts(map, 'lines')), {
      headers: { 'content-type': 'application/json', 'cache-control': 'no-store' },
    }),
});
