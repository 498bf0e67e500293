import { setNoteState } from '@/lib/review/notes';
import { readJson, route } from '@/lib/http/route';

export const PUT = route(setNoteState, {
  read: async (request, { noteId }) => ({ ...(await readJson(request)), noteId }),
});
