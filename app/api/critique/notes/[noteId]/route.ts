import { editNote } from '@/lib/critique/edit-note';
import { readJson } from '@/lib/http/read-json';
import { route } from '@/lib/http/route';

export const PUT = route(editNote, { read: async (request, { noteId }) => ({ ...(await readJson(request)), noteId }) });
