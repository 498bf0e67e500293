import { fileResponse } from '@/lib/export/file';
import { exportSpacing } from '@/lib/export/spacing';
import { route } from '@/lib/http/route';

export const GET = route(exportSpacing, {
  read: (request, { proofId, specimenId }) => {
    const asked = new URL(request.url).searchParams;
    return { proofId, specimenId, as: asked.get('as'), licence: asked.get('licence') === 'read' };
  },
  respond: ({ text, mime, name }) => fileResponse(text, mime, name),
});
