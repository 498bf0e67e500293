import { json, readJson, route } from '@/lib/http/route';
import { keepAsNote } from '@/lib/wall/screen';

export const POST = route(keepAsNote, {
  read: async (request, { wallId }) => ({ ...(await readJson(request)), wallId }),
  respond: (stored) => json(stored, 201),
});
