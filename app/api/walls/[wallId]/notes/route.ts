import { readJson } from '@/lib/http/read-json';
import { json, route } from '@/lib/http/route';
import { keepAsNote } from '@/lib/wall/keep-as-note';

export const POST = route(keepAsNote, {
  read: async (request, { wallId }) => ({ ...(await readJson(request)), wallId }),
  respond: (stored) => json(stored, 201),
});
