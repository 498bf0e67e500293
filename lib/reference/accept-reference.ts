import { changedMeanwhile, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { referenceOnly } from '@/shared/schemas/reference';
import { referenceView } from '../rows/reference';

/** The author has looked at a carried start and takes it as it is: from now on it is a reference. */
export const acceptReference = operation({
  name: 'accept-reference',
  allow: 'reference:set',
  input: referenceOnly,
  run: async ({ data, now }, { referenceId }) => {
    const row = await data.references.find(referenceId);
    if (!row || !(await data.references.isMine(referenceId))) throw notFound();
    const { spacing, tolerances, reasons } = referenceView(row);
    const changed = await data.references.change(
      referenceId,
      row.version,
      { spacing, tolerances, reasons, carriedFromId: null },
      now,
    );
    if (!changed) throw changedMeanwhile('this reference');
    return { exerciseId: row.specimenVersion.specimen.exerciseId, specimenId: row.specimenVersion.specimen.id };
  },
});
