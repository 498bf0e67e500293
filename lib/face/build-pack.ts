import { type Pack, PackError, parsePack } from '@/shared/schemas/pack';
import { findFace } from './catalogue';
import type { PairTable } from './compose-pairs';
import { FaceError, quoted } from './face-error';
import { packLettering, type LetteringSource } from './pack-lettering';
import type { AxisValues } from './read-face';
import type { InspectedFace, JobSource } from './processes/jobs';
import { inFaceProcess } from './processes/pool';

/** A face: one of the catalogue by its key, or the bytes of a file. Axes that are not named keep their usual value. */
export type FaceSource =
  | { kind: 'catalogue'; key: string; axes?: AxisValues }
  | { kind: 'file'; bytes: Uint8Array; index?: number; axes?: AxisValues };

export type { LetteringSource };

/**
 * The pack of a line: all that a browser needs to draw and measure it, and never the face file itself.
 * The only place that knows fonts. Throws FaceError on a bad face or text, in bounded time.
 */
export async function buildPack(source: FaceSource | LetteringSource, text: string): Promise<Pack> {
  if (source.kind === 'lettering') return packLettering(source, text);
  return named(source, checked(await inFaceProcess({ task: 'pack', source: jobSource(source), text })));
}

function checked(made: Pack): Pack {
  try {
    return parsePack(made);
  } catch (error) {
    if (error instanceof PackError)
      throw new FaceError('damaged', `This face can't set ${quoted(made.text)}: ${error.message} Choose another face.`);
    throw error;
  }
}

/**
 * Static files cut from a variable face often carry its first instance's name; an installed face goes by the
 * catalogue's.
 */
function named(source: FaceSource, pack: Pack): Pack {
  if (source.kind !== 'catalogue' || pack.face === null) return pack;
  const { family, style, weight, italic, axes } = findFace(source.key);
  return {
    ...pack,
    face: axes.length > 0 ? { ...pack.face, family } : { ...pack.face, family, style, weight, italic },
  };
}

/**
 * What a face says of itself, with its licence text where the file carries it, and what a second reader found. Throws
 * FaceError.
 */
export async function inspectFace(source: FaceSource): Promise<InspectedFace> {
  return inFaceProcess({ task: 'facts', source: jobSource(source) });
}

/** Outlines and built-in values of many pairs of letters at once, e.g. ['AV', 'To']. Throws FaceError. */
export async function buildPairs(source: FaceSource, pairs: string[]): Promise<PairTable> {
  return inFaceProcess({ task: 'pairs', source: jobSource(source), pairs });
}

function jobSource(source: FaceSource): JobSource {
  const { axes } = source;
  if (source.kind === 'catalogue') {
    const face = findFace(source.key);
    // A variable file may be drawn at an end of its axes (one here at weight 900): its package tells the usual values.
    return {
      path: face.path,
      axes: { ...Object.fromEntries(face.axes.map(({ tag, usual }) => [tag, usual])), ...axes },
    };
  }
  return { bytes: source.bytes, index: source.index, axes };
}
