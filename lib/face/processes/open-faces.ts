import { readFile } from 'node:fs/promises';
import agreedFiles from '../agreed-files.json';
import { FaceError } from '../face-error';
import { readFace, type Face } from '../read-face';
import { compareReaders, fileHash, type SecondReading } from '../second-reader';
import type { JobSource, CheckedFace } from './jobs';

/** Faces kept open, the one used last at the end: an exercise asks for many lines in few faces. */
const MOST_OPEN = 12;
const openFaces = new Map<string, CheckedFace>();

/** Takes a face in: opens it and, the first time, has a second reader look at it. Throws FaceError. */
export async function faceOf(source: JobSource): Promise<CheckedFace> {
  const bytes = source.bytes ?? (await readFile(source.path ?? ''));
  const file = fileHash(bytes);
  const index = source.index ?? 0;
  const key = JSON.stringify([file, index, Object.entries(source.axes ?? {}).sort()]);
  const face = openFaces.get(key) ?? (await openAndCheck(bytes, source, file, index));
  openFaces.delete(key);
  openFaces.set(key, face);
  for (const oldest of openFaces.keys()) if (openFaces.size > MOST_OPEN) openFaces.delete(oldest);
  return face;
}

async function openAndCheck(bytes: Uint8Array, source: JobSource, file: string, index: number): Promise<CheckedFace> {
  const face = await readFace(bytes, source);
  return { ...face, secondReading: readingAt(face, readTwice(face, file, index)) };
}

/**
 * A reading is a few words and costs more than opening the face, so many are cached. Those of the installed files,
 * which do not change, were made when they were installed (lib/bin/check-faces.ts).
 */
const MOST_READINGS = 2_000;
const readings = new Map<string, SecondReading | FaceError>();
const installed = new Map(Object.entries(agreedFiles));

/** The readers' verdict on a face, asked for once in the life of this process. */
function readTwice(face: Face, file: string, index: number): SecondReading {
  const letters = installed.get(file);
  if (letters !== undefined && index === 0) return { letters, unchecked: null };
  const key = `${file} ${index}`;
  let reading = readings.get(key);
  if (reading === undefined) {
    try {
      reading = compareReaders(face.harfbuzz, face.font.face, face.tables);
    } catch (error) {
      if (!(error instanceof FaceError)) throw error;
      reading = error;
    }
    if (readings.size >= MOST_READINGS) readings.clear();
    readings.set(key, reading);
  }
  if (reading instanceof FaceError) throw reading;
  return reading;
}

/** Letters are compared at the usual values of a face's axes; elsewhere nothing was. */
function readingAt(face: Face, reading: SecondReading): SecondReading {
  const moved = face.facts.axes.filter((axis) => axis.value !== axis.usual);
  if (moved.length === 0) return reading;
  const set = moved.map(({ tag, value, usual }) => `${tag} is ${value}, usually ${usual}`).join('; ');
  return { letters: reading.letters, unchecked: `Only the usual setting of this variable face was compared (${set}).` };
}
