import { AppError, notFound } from '@/lib/access/errors';
import { operation, type Context } from '@/lib/access/operation';
import type { NewVersion } from '@/lib/data/specimens';
import { addSpecimensInput, mostAtOnce, mostSpecimens } from '@/shared/schemas/specimen';
import { counted } from '@/shared/text/number';
import { findExercise } from './find-exercise';
import { makeVersion, type TypedSpecimen } from './make-version';

/** Makes one specimen of every line in every face, at every size, on every ground. All of them or none. */
export const addSpecimens = operation({
  name: 'add-specimens',
  allow: 'exercise:plan',
  input: addSpecimensInput,
  run: async (context, { exerciseId, lines, faces, sizes, grounds }) => {
    await findExercise(context, exerciseId);
    const wanted: TypedSpecimen[] = lines.flatMap((text) =>
      faces.flatMap((face) => sizes.flatMap((size) => grounds.map((ground) => ({ text, face, size, ground })))),
    );
    refuseTooMany(wanted.length, await context.data.specimens.count(exerciseId));
    const versions = await makeAll(context, wanted);
    const specimenIds = await context.data.specimens.add(exerciseId, versions, context.now);
    if (specimenIds === null) throw notFound();
    return { exerciseId, specimenIds };
  },
});

function refuseTooMany(wanted: number, there: number): void {
  if (wanted > mostAtOnce)
    throw new AppError(
      'INVALID',
      `That would make ${counted(wanted, 'line')}; ${mostAtOnce} are the most at once. Take fewer lines, faces or sizes, and do the rest in a second go.`,
    );
  if (there + wanted > mostSpecimens)
    throw new AppError(
      'INVALID',
      `The exercise has ${counted(there, 'line')} and would have ${there + wanted}; ${mostSpecimens} are the most in one exercise.`,
    );
}

/** One after another, so that a large order does not keep everybody else waiting. Says of every line what is wrong with it. */
async function makeAll(context: Context, wanted: readonly TypedSpecimen[]): Promise<NewVersion[]> {
  const versions: NewVersion[] = [];
  const wrong = new Set<string>();
  for (const typed of wanted) {
    try {
      versions.push((await makeVersion(context, typed)).version);
    } catch (error) {
      if (!(error instanceof AppError) || error.code !== 'INVALID') throw error;
      wrong.add(error.said);
    }
  }
  if (wrong.size === 0) return versions;
  const said = `No line was added. ${[...wrong].slice(0, 6).join(' ')}${wrong.size > 6 ? ` And ${wrong.size - 6} more like these.` : ''}`;
  throw new AppError('INVALID', said, { fields: { lines: said } });
}
