import { liveRoute } from '@/lib/http/live-route';
import { getWall, watchWall } from '@/lib/wall/screen';

export const GET = liveRoute(getWall, {
  read: ({ wallId }) => ({ wallId }),
  topics: ({ id, roundId }) => [`wall:${id}`, `points:${id}`, `round:${roundId}`],
  again: (caller, input) => watchWall(caller, input),
});
