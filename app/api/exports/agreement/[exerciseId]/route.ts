import { exportAgreement } from '@/lib/export/class-tables';
import { fileResponse } from '@/lib/export/file';
import { route } from '@/lib/http/route';

export const GET = route(exportAgreement, {
  read: (request, { exerciseId }) => ({ exerciseId, roundNumber: new URL(request.url).searchParams.get('round') }),
  respond: ({ csv, name }) => fileResponse(csv, 'text/csv', name),
});
