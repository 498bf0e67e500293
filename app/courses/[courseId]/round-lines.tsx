import { When } from '@/app/_ui/When';
import type { roundView } from '@/lib/rows/exercise';

type Round = ReturnType<typeof roundView>;

/** When each round opens and is due, one line a round. */
export function RoundLines({ rounds, timeZone }: { rounds: readonly Round[]; timeZone: string }) {
  return (
    <ul role="list">
      {rounds.map((round) => (
        <li key={round.id}>
          Round {round.number}
          {round.title && <>, {round.title}</>}
          {round.dueAt ? (
            <>
              : due <When at={round.dueAt} timeZone={timeZone} />
            </>
          ) : (
            ': no date set'
          )}
        </li>
      ))}
    </ul>
  );
}
