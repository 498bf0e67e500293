import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { roundInHand } from '@/lib/review/context';
import { openWallSchema } from '@/shared/schemas/wall';
import { newWallCode, newWallSettings, storedWallSettings } from './wall-settings';

/** Opens a wall for one specimen in one round, or gives the one that is open; two at the same moment get the same. */
export const openWall = operation({
  name: 'open-wall',
  allow: 'wall:run',
  input: openWallSchema,
  run: ({ data, now }, { exerciseId, roundNumber, specimenId }): Promise<{ wallId: string }> =>
    retryOnConflict(async () => {
      const { round, me } = await roundInHand(data, exerciseId, roundNumber);
      const specimen = await data.specimens.find(specimenId);
      if (!specimen || specimen.exerciseId !== exerciseId) throw notFound();
      const before = await data.walls.countOf(round.id, specimenId);
      const there = (await data.walls.openOf(round.id, now)).find((wall) => wall.specimenId === specimenId);
      if (there) return { wallId: there.id };
      return {
        wallId: await data.walls.open(
          {
            before,
            roundId: round.id,
            specimenId,
            code: newWallCode(),
            settings: storedWallSettings(newWallSettings()),
            openedById: me.id,
          },
          now,
        ),
      };
    }),
});
