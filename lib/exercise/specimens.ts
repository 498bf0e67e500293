import { readFile } from 'node:fs/promises';
import { AppError, notFound } from '@/lib/access/errors';
import { type Context, operation } from '@/lib/access/operation';
import type { NewVersion } from '@/lib/data/specimens';
import { buildPack } from '@/lib/face/build-pack';
import { FaceError } from '@/lib/face/face-error';
import type { Pack } from '@/shared/schemas/pack';
import type { Ground, Size } from '@/shared/schemas/spacing';
import {
  addSpecimensInput,
  mostAtOnce,
  mostSpecimens,
  moveSpecimenInput,
  specimenOnly,
} from '@/shared/schemas/specimen';
import { counted } from '@/shared/text/number';
import { findExercise } from './exercises';
import { faceAt } from './faces';

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

/** One after another, so that a large order does not block other requests. Reports every line's fault. */
async function makeAll(context: Context, wanted: readonly TypedSpecimen[]): Promise<NewVersion[]> {
  const versions: NewVersion[] = [];
  const wrong = new Set<string>();
  for (const typed of wanted) {
    try {
      versions.push((await makeVersion(context, typed)).version);
    } catch (error) {
      if (!(error instanceof AppError) || error.code !== 'INVALID') throw error;
      wrong.add(error.userMessage);
    }
  }
  if (wrong.size === 0) return versions;
  const message = `No line was added. ${[...wrong].slice(0, 6).join(' ')}${wrong.size > 6 ? ` And ${wrong.size - 6} more like these.` : ''}`;
  throw new AppError('INVALID', message, { fields: { lines: message } });
}

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

export type TypedSpecimen = { text: string; face: string; size: Size; ground: Ground; remark?: string };

/**
 * Splits and packs a line in a face, and stores the pack with its face. Done once, when a version is made.
 * @throws AppError INVALID that says which letter a face lacks, or that the line has no pair.
 */
export async function makeVersion(
  { data, now }: Context,
  typed: TypedSpecimen,
): Promise<{ version: NewVersion; pack: Pack }> {
  const { face, axes, weight, style } = faceAt(typed.face, typed.size);
  const built = await packOf(face.key, axes, typed.text);
  // The catalogue's names: files cut from a variable face often name the instance they were cut from.
  const pack: Pack = built.face === null ? built : { ...built, face: { ...built.face, family: face.family, style } };
  const bytes = await readFile(face.path);
  const faceId = await data.packs.storeFace(
    {
      bytes,
      mime: face.mime,
      name: face.path.split('/').at(-1)!,
      licence: { ...face.licence, source: face.source, offeredBy: 'installation' },
    },
    {
      index: 0,
      axes,
      family: face.family,
      style,
      weight,
      details: { choice: typed.face, design: face.design, italic: face.italic },
      installed: true,
    },
    now,
  );
  const packSha = await data.packs.storePack(pack, faceId, now);
  const details = { remark: typed.remark ?? '', start: null };
  return { pack, version: { text: pack.text, packSha, size: typed.size, ground: typed.ground, details } };
}

async function packOf(key: string, axes: Record<string, number>, text: string): Promise<Pack> {
  let pack: Pack;
  try {
    pack = await buildPack({ kind: 'catalogue', key, axes }, text);
  } catch (error) {
    if (error instanceof FaceError)
      throw new AppError('INVALID', error.message, { fields: { lines: error.message }, cause: error });
    throw error;
  }
  if (pack.letters.length < 2)
    throw new AppError('INVALID', `“${text}” has only one letter, and there is nothing to space. Write at least two.`);
  return pack;
}
