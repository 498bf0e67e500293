import { liveRoute } from '@/lib/http/live-route';
import { phonesTogether } from '@/lib/wall/phones-together';
import { showPointing } from '@/lib/wall/show-pointing';

export const GET = liveRoute(showPointing, {
  read: ({ code }) => ({ code }),
  topics: ({ wallId, roundId }) => [`wall:${wallId}`, `round:${roundId}`],
  again: (_caller, _input, shown) => phonesTogether(shown),
});
