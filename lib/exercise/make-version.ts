import { readFile } from 'node:fs/promises';
import type { Context } from '@/lib/access/operation';
import { AppError } from '@/lib/access/errors';
import type { NewVersion } from '@/lib/data/specimens';
import { buildPack } from '@/lib/face/build-pack';
import { FaceError } from '@/lib/face/face-error';
import type { Pack } from '@/shared/schemas/pack';
import type { Ground, Size } from '@/shared/schemas/spacing';
import { faceAt } from './face-choices';

export type TypedSpecimen = { text: string; face: string; size: Size; ground: Ground; remark?: string };

/**
 * Splits and packs a line in a face, and keeps the pack with the face it came from. Done once, when a version is made.
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
  const faceId = await data.packs.keepFace(
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
  const packSha = await data.packs.keepPack(pack, faceId, now);
  const details = { remark: typed.remark ?? '' };
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
