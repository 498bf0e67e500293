import { answerInThread } from '@/lib/review/notes';
import { readJson, route } from '@/lib/http/route';

export const POST = route(answerInThread, {
  read: async (request, { noteId }) => ({ ...(await readJson(request)), noteId }),
});
