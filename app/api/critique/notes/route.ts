import { writeNote } from '@/lib/review/notes';
import { readJson } from '@/lib/http/read-json';
import { route } from '@/lib/http/route';

export const POST = route(writeNote, { read: (request) => readJson(request) });
