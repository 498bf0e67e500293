import { liveRoute } from '@/lib/http/live-route';
import { showWall, watchWall } from '@/lib/wall/screen';

export const GET = liveRoute(showWall, {
  read: ({ wallId }) => ({ wallId }),
  topics: ({ id, roundId }) => [`wall:${id}`, `points:${id}`, `round:${roundId}`],
  again: (caller, input) => watchWall(caller, input),
});
