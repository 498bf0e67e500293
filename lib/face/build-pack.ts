import { readFile } from 'node:fs/promises';
import type { Pack } from '@/shared/schemas/pack';
import { parsePack } from '@/shared/schemas/parse-pack';
import { findFace } from './catalogue';
import { composePack } from './compose-pack';
import { packLettering, type LetteringSource } from './pack-lettering';
import { readFace, type AxisValues } from './read-face';

/** A face: one of the catalogue by its key, or the bytes of a file. */
export type FaceSource =
  | { kind: 'catalogue'; key: string; axes?: AxisValues }
  | { kind: 'file'; bytes: Uint8Array; index?: number; axes?: AxisValues };

export type { LetteringSource };

/**
 * The pack of a line: all that a browser needs to draw and measure it, and never the face file itself.
 * The only place that knows fonts. Throws FaceError on a bad face or text.
 */
export async function buildPack(source: FaceSource | LetteringSource, text: string): Promise<Pack> {
  if (source.kind === 'lettering') return packLettering(source, text);
  const bytes = source.kind === 'file' ? source.bytes : await readFile(findFace(source.key).path);
  const face = await readFace(bytes, source);
  return parsePack(composePack(face, text));
}
