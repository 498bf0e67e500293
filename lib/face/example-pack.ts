import type { Pack } from '@/shared/schemas/pack';
import { buildPack } from './build-pack';

/** The lines that our own pages show; a fixed few, so they are read once per server. */
const cache = new Map<string, Promise<Pack>>();

/** The pack of an example line on one of our own pages. Not for lines that people type. Throws FaceError. */
export function examplePack(key: string, text: string, axes?: Record<string, number>): Promise<Pack> {
  const name = JSON.stringify([key, text, axes]);
  const known = cache.get(name);
  if (known) return known;
  const made = buildPack({ kind: 'catalogue', key, ...(axes && { axes }) }, text);
  cache.set(name, made);
  made.catch(() => cache.delete(name));
  return made;
}
