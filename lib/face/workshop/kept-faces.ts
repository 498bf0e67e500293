import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { readFace, type Face } from '../read-face';
import type { JobSource } from './jobs';

/** Faces kept open, the one used last at the end: an exercise asks for many lines of few faces. */
const KEPT = 12;
const kept = new Map<string, Face>();

export async function faceOf(source: JobSource): Promise<Face> {
  const bytes = source.bytes ?? (await readFile(source.path ?? ''));
  const file = source.path ?? createHash('sha256').update(bytes).digest('hex');
  const key = JSON.stringify([file, source.index ?? 0, Object.entries(source.axes ?? {}).sort()]);
  const face = kept.get(key) ?? (await readFace(bytes, source));
  kept.delete(key);
  kept.set(key, face);
  for (const oldest of kept.keys()) if (kept.size > KEPT) kept.delete(oldest);
  return face;
}
