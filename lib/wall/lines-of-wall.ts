import type { ScopedData } from '@/lib/data';
import type { ShownWall } from '@/lib/data/walls';
import { spacingOf } from '@/lib/rows/spacing';
import type { WallLine } from '@/shared/schemas/wall';
import { signsOf } from '@/shared/class/wall';
import { lineKey, type WallSettings } from './wall-settings';

type Item = Awaited<ReturnType<ScopedData['walls']['settingsOf']>>[number];
export type OnWall = { line: WallLine; item: Item };

/** The newest setting of each student, under the key that stands for it, in the order of the keys. */
export async function linesOfWall(data: ScopedData, wall: ShownWall, settings: WallSettings): Promise<OnWall[]> {
  const newest = new Map<string, Item>();
  for (const item of await data.walls.settingsOf(wall)) {
    const known = newest.get(item.proof.memberId);
    if (!known || known.proof.number < item.proof.number) newest.set(item.proof.memberId, item);
  }
  const keyed = [...newest]
    .map(([memberId, item]) => ({ key: lineKey(settings.salt, memberId), item }))
    .sort((one, other) => (one.key < other.key ? -1 : 1));
  const signs = signsOf(keyed.map(({ key }) => key));
  return keyed.map(({ key, item }) => ({
    item,
    line: {
      key,
      sign: signs.get(key)!,
      version: item.specimenVersion.number,
      spacing: spacingOf(item),
      sent: item.proof.number,
      out: settings.out.includes(key),
    },
  }));
}

/** What phones see of them: not those left out, and only the one in front if there is one. */
export function onPhones(lines: readonly OnWall[], { front }: WallSettings): OnWall[] {
  const seen = lines.filter(({ line }) => !line.out);
  return seen.some(({ line }) => line.key === front) ? seen.filter(({ line }) => line.key === front) : seen;
}
