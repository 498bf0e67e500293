import { getDraft, saveDraft } from '@/lib/work/drafts';
import { json, readJson, route } from '@/lib/http/route';

export const GET = route(getDraft, { read: (_request, { draftId }) => ({ draftId }) });

/** Autosave: 200 with the version it made, or 409 with what the server has instead. */
export const PUT = route(saveDraft, {
  read: async (request, { draftId }) => ({ ...(await readJson(request)), draftId }),
  respond: (answer) => json(answer, 'conflict' in answer ? 409 : 200),
});
