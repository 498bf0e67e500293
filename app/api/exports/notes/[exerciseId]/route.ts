import { exportRoundNotes } from '@/lib/export/notes';
import { fileResponse } from '@/lib/export/file';
import { annotationType } from '@/lib/export/web-annotations';
import { route } from '@/lib/http/route';

export const GET = route(exportRoundNotes, {
  read: (request, { exerciseId }) => ({ exerciseId, roundNumber: new URL(request.url).searchParams.get('round') }),
  respond: ({ annotations, name }) => fileResponse(JSON.stringify(annotations, null, 2), annotationType, name),
});
