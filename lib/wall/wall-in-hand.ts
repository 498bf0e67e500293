import { notFound } from '@/lib/access/errors';
import type { ScopedData } from '@/lib/data';
import { readWallSettings } from './wall-settings';

/** An open wall of the actor's, as staff, with its settings. */
export async function wallInHand(data: ScopedData, wallId: string, now: Date) {
  const wall = await data.walls.byId(wallId, now);
  if (!wall) throw notFound();
  return { wall, settings: readWallSettings(wall.settings) };
}

/** An open wall by its code. A wrong code, a closed wall and one that was never there are the same. */
export async function wallOfCode(data: ScopedData, code: string, now: Date) {
  const wall = await data.walls.byCode(code, now);
  if (!wall) throw notFound();
  return { wall, settings: readWallSettings(wall.settings) };
}
