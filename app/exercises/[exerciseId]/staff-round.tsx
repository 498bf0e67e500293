import { ButtonLink } from '@/app/_ui/Button';
import { Progress } from '@/app/_ui/Progress';
import { Status } from '@/app/_ui/Status';
import { When } from '@/app/_ui/When';
import type { Overview } from '@/lib/exercise/get-overview';
import { lateWords } from './plan/setting-words';

type Props = {
  exercise: Overview['exercise'];
  round: Overview['rounds'][number];
  students: number;
  timeZone: string;
  mayRelease: boolean;
};

/** One round for staff: its dates, who has sent, and the way to critique and release. */
export function StaffRound({ exercise, round, students, timeZone, mayRelease }: Props) {
  const to = `/exercises/${exercise.id}/rounds/${round.number}`;
  return (
    <li>
      <h3>
        Round {round.number}
        {round.title && `: ${round.title}`}
      </h3>
      <p>
        {round.opensAt ? (
          <>
            Opens <When at={round.opensAt} timeZone={timeZone} />.{' '}
          </>
        ) : round.number === 1 ? (
          'Opens with publication. '
        ) : (
          'Opens for each student with the release of the round before. '
        )}
        {round.dueAt ? (
          <>
            Due <When at={round.dueAt} timeZone={timeZone} />; {lateWords(round.lateRule)}.
          </>
        ) : (
          'No due date.'
        )}
      </p>
      <p className="note-size">
        <Status kind={stateKind[round.state]}>{stateWords[round.state]}</Status>
        {exercise.state !== 'draft' && students > 0 && (
          <>
            {' '}
            · <Progress done={round.senders} of={students} what="student" verb="have sent" />
          </>
        )}
      </p>
      {round.senders > 0 && (
        <div className="actions">
          <ButtonLink small href={`${to}/critique`}>
            Critique
          </ButtonLink>
          <ButtonLink small href={`${to}/wall`}>
            Wall
          </ButtonLink>
          {mayRelease && (
            <ButtonLink small href={`${to}/release`}>
              Release…
            </ButtonLink>
          )}
        </div>
      )}
    </li>
  );
}

const stateKind = { open: 'waiting', marking: 'going', released: 'done' } as const;
const stateWords = { open: 'Not marked yet', marking: 'Being marked', released: 'Released' } as const;
