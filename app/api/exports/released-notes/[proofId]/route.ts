import { exportReleasedNotes } from '@/lib/export/notes';
import { fileResponse } from '@/lib/export/file';
import { annotationType } from '@/lib/export/web-annotations';
import { route } from '@/lib/http/route';

export const GET = route(exportReleasedNotes, {
  read: (_request, { proofId }) => ({ proofId }),
  respond: ({ annotations, name }) => fileResponse(JSON.stringify(annotations, null, 2), annotationType, name),
});
