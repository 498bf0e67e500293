import type { Pack } from '@/shared/schemas/pack';
import { buildPack } from './build-pack';

/** The lines that our own pages show; a fixed few, so they are read once per server. */
const kept = new Map<string, Promise<Pack>>();

/** The pack of an example line on one of our own pages. Not for lines that people type. Throws FaceError. */
export function examplePack(key: string, text: string, axes?: Record<string, number>): Promise<Pack> {
  const name = JSON.stringify([key, text, axes]);
  const known = kept.get(name);
  if (known) return known;
  const made = buildPack({ kind: 'catalogue', key, ...(axes && { axes }) }, text);
  kept.set(name, made);
  made.catch(() => kept.delete(name));
  return made;
}
