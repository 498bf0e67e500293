import { exportSheet } from '@/lib/export/sheets';
import { fileResponse } from '@/lib/export/file';
import { route } from '@/lib/http/route';

export const GET = route(exportSheet, {
  read: (request, { proofId }) => {
    const asked = new URL(request.url).searchParams;
    return { proofId, paper: asked.get('paper') ?? undefined, licence: asked.get('licence') === 'read' };
  },
  respond: ({ pdf, name }) => fileResponse(pdf, 'application/pdf', name),
});
