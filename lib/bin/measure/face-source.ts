import { readFile, stat } from 'node:fs/promises';
import type { FaceSource } from '@/lib/face/build-pack';
import { findFace } from '@/lib/face/catalogue';
import { quoted } from '@/lib/face/face-error';
import { LIMITS } from '@/lib/face/limits';
import type { FaceChoice } from './arguments';
import { CommandError } from './command-error';

/** A file where there is one of that name, else a face of the catalogue. */
export async function faceSource({ face, index, axes }: FaceChoice): Promise<FaceSource> {
  const file = await stat(face).catch(() => null);
  if (file === null && /^[a-z0-9-]+$/.test(face)) return { kind: 'catalogue', key: findFace(face).key, axes };
  if (file === null)
    throw new CommandError(
      `There is no file ${quoted(face, 200)}. Give the path of a face file or a key of the catalogue.`,
    );
  if (!file.isFile()) throw new CommandError(`${quoted(face, 200)} is not a file. Give the path of a face file.`);
  if (file.size > LIMITS.fileBytes)
    throw new CommandError(`${quoted(face, 200)} has ${file.size} bytes; ${LIMITS.fileBytes} is the most for a face.`);
  return {
    kind: 'file',
    bytes: await readFile(face).catch((error: Error) => {
      throw new CommandError(`${quoted(face, 200)} can't be read: ${error.message}.`);
    }),
    index,
    axes,
  };
}
