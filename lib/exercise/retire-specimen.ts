import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { specimenOnly } from '@/shared/schemas/specimen';

/** Takes a specimen out of an exercise; drafts and proofs on it stay, and it can be put back. */
export const retireSpecimen = operation({
  name: 'retire-specimen',
  allow: 'exercise:plan',
  input: specimenOnly,
  run: async ({ data, now }, { specimenId }) => {
    const specimen = await data.specimens.find(specimenId);
    if (!specimen || !(await data.specimens.setRetired(specimenId, now))) throw notFound();
    return { exerciseId: specimen.exerciseId };
  },
});
