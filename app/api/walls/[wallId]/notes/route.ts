import { json, readJson, route } from '@/lib/http/route';
import { saveAsNote } from '@/lib/wall/screen';

export const POST = route(saveAsNote, {
  read: async (request, { wallId }) => ({ ...(await readJson(request)), wallId }),
  respond: (stored) => json(stored, 201),
});
