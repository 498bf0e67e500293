import { exportOneRoster } from '@/lib/export/oneroster';
import { fileResponse } from '@/lib/export/file';
import { route } from '@/lib/http/route';

export const GET = route(exportOneRoster, {
  read: (request, { exerciseId }) => ({ exerciseId, roundNumber: new URL(request.url).searchParams.get('round') }),
  respond: ({ zip, name }) => fileResponse(zip, 'application/zip', name),
});
