import { operation } from '@/lib/access/operation';
import { announce } from '@/lib/live/announce';
import { wallOnly } from '@/shared/schemas/wall';
import { wallInHand } from './wall-in-hand';

/** Closes a wall: its link ends at once, and where the room pointed is forgotten. Notes that were kept stay. */
export const closeWall = operation({
  name: 'close-wall',
  allow: 'wall:run',
  input: wallOnly,
  run: async ({ data, now }, { wallId }) => {
    const { wall } = await wallInHand(data, wallId, now);
    await data.walls.close(wall.id, now);
    announce(`wall:${wallId}`);
    return { exerciseId: wall.round.exercise.id, roundNumber: wall.round.number };
  },
});
