import { writeNote } from '@/lib/review/notes';
import { readJson, route } from '@/lib/http/route';

export const POST = route(writeNote, { read: (request) => readJson(request) });
