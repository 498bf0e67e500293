import type { ScopedData } from '@/lib/data';
import type { ShownWall } from '@/lib/data/walls';
import { readPack } from '@/lib/rows/specimen';
import { settingOf } from '@/lib/reference/compare';
import type { WallPack } from '@/shared/schemas/wall';

/** What the lines are drawn with: one pack for each version of the specimen that is on the wall. */
export async function packsOfWall(
  data: ScopedData,
  wall: ShownWall,
  versions: ReadonlySet<number>,
): Promise<WallPack[]> {
  const rows = await data.walls.versionsOf(wall);
  return rows
    .filter(({ number }, index) => versions.has(number) || index === rows.length - 1)
    .map((row) => ({ version: row.number, pack: readPack(row.packSha, row.pack.payload), ...settingOf(row) }));
}
