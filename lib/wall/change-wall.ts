import { operation } from '@/lib/access/operation';
import { swapped } from '@/lib/data/compare-and-swap';
import { retryOnConflict } from '@/lib/data/retry';
import { announce } from '@/lib/live/announce';
import { changeWallSchema, type WallChange } from '@/shared/schemas/wall';
import { linesOfWall } from './lines-of-wall';
import { wallInHand } from './wall-in-hand';
import { storedWallSettings, type WallSettings } from './wall-settings';

/** Changes what is on the wall and on the phones. Each change stands for itself, so that two people at one wall lose nothing. */
export const changeWall = operation({
  name: 'change-wall',
  allow: 'wall:run',
  input: changeWallSchema,
  run: async ({ data, now }, { wallId, change }): Promise<{ changed: true }> => {
    await retryOnConflict(async () => {
      const { wall, settings } = await wallInHand(data, wallId, now);
      const next =
        change.kind === 'leave all out'
          ? {
              ...settings,
              front: null,
              out: change.out ? (await linesOfWall(data, wall, settings)).map(({ line }) => line.key) : [],
            }
          : changed(settings, change);
      swapped(await data.walls.change(wall.id, wall.version, storedWallSettings(next)), 'The wall');
      if (change.kind === 'ask anew') await data.walls.forgetPoints(wall);
    });
    announce(`wall:${wallId}`);
    return { changed: true };
  },
});

function changed(settings: WallSettings, change: Exclude<WallChange, { kind: 'leave all out' }>): WallSettings {
  switch (change.kind) {
    case 'pointing':
      return { ...settings, pointing: change.to };
    case 'front':
      return { ...settings, front: change.line };
    case 'ask anew':
      return { ...settings, asking: settings.asking + 1 };
    case 'leave out': {
      const others = settings.out.filter((key) => key !== change.line);
      return {
        ...settings,
        out: change.out ? [...others, change.line] : others,
        front: change.out && settings.front === change.line ? null : settings.front,
      };
    }
  }
}
