import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { moveSpecimenInput } from '@/shared/schemas/specimen';

/** Moves a specimen one place in the order of its exercise. */
export const moveSpecimen = operation({
  name: 'move-specimen',
  allow: 'exercise:plan',
  input: moveSpecimenInput,
  run: async ({ data }, { specimenId, to }) => {
    const specimen = await data.specimens.find(specimenId);
    if (!specimen) throw notFound();
    await data.transaction(async (inside) => {
      const list = await inside.specimens.ofExercise(specimen.exerciseId);
      const at = list.findIndex(({ id }) => id === specimenId);
      const other = to === 'earlier' ? at - 1 : at + 1;
      if (at < 0 || !list[other]) return;
      const order = list.map(({ id }) => id);
      [order[at], order[other]] = [order[other]!, order[at]!];
      // Written afresh, so that two of one position can't stay side by side.
      for (const [index, id] of order.entries())
        if (list[index]!.id !== id || list[index]!.position !== index + 1)
          await inside.specimens.setPosition(id, index + 1);
    });
    return { exerciseId: specimen.exerciseId };
  },
});
