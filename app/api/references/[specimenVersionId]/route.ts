import { json, readJson, route } from '@/lib/http/route';
import { saveReference } from '@/lib/reference/references';

/**
 * Autosave of a reference; `?slot=2` for a second one. 200 with the version it made, or 409 with what is stored
 * instead.
 */
export const PUT = route(saveReference, {
  read: async (request, { specimenVersionId }) => ({
    ...(await readJson(request)),
    specimenVersionId,
    slot: Number(new URL(request.url).searchParams.get('slot') ?? 1),
  }),
  respond: (answer) => json(answer, 'conflict' in answer ? 409 : 200),
});
