import { exportSheetPreview } from '@/lib/export/sheets';
import { fileResponse } from '@/lib/export/file';
import { route } from '@/lib/http/route';

export const GET = route(exportSheetPreview, {
  read: (request, { exerciseId }) => {
    const asked = new URL(request.url).searchParams;
    return {
      exerciseId,
      roundNumber: asked.get('round'),
      proof: asked.get('proof'),
      paper: asked.get('paper') ?? undefined,
      licence: asked.get('licence') === 'read',
    };
  },
  respond: ({ pdf, name }) => fileResponse(pdf, 'application/pdf', name),
});
