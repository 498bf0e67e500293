import { fileResponse } from '@/lib/export/file';
import { exportClass } from '@/lib/export/class-tables';
import { route } from '@/lib/http/route';

export const GET = route(exportClass, {
  read: (request, { exerciseId }) => ({ exerciseId, roundNumber: new URL(request.url).searchParams.get('round') }),
  respond: ({ csv, name }) => fileResponse(csv, 'text/csv', name),
});
