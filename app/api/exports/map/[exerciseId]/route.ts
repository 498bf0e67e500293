import { exportMap } from '@/lib/export/class-tables';
import { fileResponse } from '@/lib/export/file';
import { route } from '@/lib/http/route';

export const GET = route(exportMap, {
  read: (request, { exerciseId }) => {
    const asked = new URL(request.url).searchParams;
    return { exerciseId, roundNumber: asked.get('round'), line: asked.get('line') };
  },
  respond: ({ csv, name }) => fileResponse(csv, 'text/csv', name),
});
