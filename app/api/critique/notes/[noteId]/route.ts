import { editNote } from '@/lib/review/notes';
import { readJson, route } from '@/lib/http/route';

export const PUT = route(editNote, { read: async (request, { noteId }) => ({ ...(await readJson(request)), noteId }) });
