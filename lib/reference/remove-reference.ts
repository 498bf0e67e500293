import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { referenceOnly } from '@/shared/schemas/reference';

/** Takes the actor's own reference away. Sets that were frozen with it, and comparisons made with them, stay. */
export const removeReference = operation({
  name: 'remove-reference',
  allow: 'reference:set',
  input: referenceOnly,
  run: async ({ data }, { referenceId }) => {
    const row = await data.references.find(referenceId);
    if (!row || !(await data.references.remove(referenceId))) throw notFound();
    return { exerciseId: row.specimenVersion.specimen.exerciseId, specimenId: row.specimenVersion.specimen.id };
  },
});
