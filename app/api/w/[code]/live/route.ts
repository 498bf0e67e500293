import { liveRoute } from '@/lib/http/live-route';
import { getPhoneState, getPointing } from '@/lib/wall/pointing';

export const GET = liveRoute(getPointing, {
  read: ({ code }) => ({ code }),
  topics: ({ wallId, roundId }) => [`wall:${wallId}`, `round:${roundId}`],
  again: (_caller, _input, shown) => getPhoneState(shown),
});
