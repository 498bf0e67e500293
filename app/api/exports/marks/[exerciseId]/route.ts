import { fileResponse } from '@/lib/export/file';
import { exportMarks } from '@/lib/export/marks';
import { route } from '@/lib/http/route';

export const GET = route(exportMarks, {
  read: (request, { exerciseId }) => ({ exerciseId, roundNumber: new URL(request.url).searchParams.get('round') }),
  respond: ({ csv, name }) => fileResponse(csv, 'text/csv', name),
});
