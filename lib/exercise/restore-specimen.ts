import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { specimenOnly } from '@/shared/schemas/specimen';

/** Puts a specimen back that was taken out. */
export const restoreSpecimen = operation({
  name: 'restore-specimen',
  allow: 'exercise:plan',
  input: specimenOnly,
  run: async ({ data }, { specimenId }) => {
    const specimen = await data.specimens.find(specimenId);
    if (!specimen || !(await data.specimens.setRetired(specimenId, null))) throw notFound();
    return { exerciseId: specimen.exerciseId };
  },
});
