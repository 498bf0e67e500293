import Link from 'next/link';
import { ButtonLink } from '@/app/_ui/Button';
import { EmptyState, Section } from '@/app/_ui/Page';
import { SectionDates } from '@/app/_ui/SectionDates';
import { When } from '@/app/_ui/Status';
import type { RoundView } from '@/lib/rows/exercise';
import { counted } from '@/shared/text/number';
import { lateWords } from './setting-words';

type Props = { exercise: { id: string }; rounds: RoundView[]; timeZone: string };

/** The rounds with their dates. */
export function RoundsPart({ exercise, rounds, timeZone }: Props) {
  const add = <ButtonLink href={`/exercises/${exercise.id}/plan/rounds/new`}>Add a round</ButtonLink>;
  return (
    <Section id="rounds" title="Rounds" actions={rounds.length > 0 ? add : undefined}>
      {rounds.length === 0 ? (
        <EmptyState title="No round yet" action={add}>
          A round is one pass of the exercise with its dates: proofs are sent, looked at, and released. One is enough;
          with two, students can answer the critique.
        </EmptyState>
      ) : (
        <ul className="card-list">
          {rounds.map((round) => (
            <li key={round.id}>
              <h3>
                <Link href={`/exercises/${exercise.id}/plan/rounds/${round.id}`}>
                  Round {round.number}
                  {round.title && `: ${round.title}`}
                </Link>
              </h3>
              <p>
                {round.opensAt ? (
                  <>
                    Opens <When at={round.opensAt} timeZone={timeZone} />
                  </>
                ) : round.number === 1 ? (
                  'Opens with publication'
                ) : (
                  'Opens for each student with the release of the round before'
                )}
                .{' '}
                {round.dueAt ? (
                  <>
                    Due <When at={round.dueAt} timeZone={timeZone} />.
                  </>
                ) : (
                  'No due date.'
                )}
              </p>
              <SectionDates sections={round.sections} timeZone={timeZone} />
              <p className="quiet note-size">
                {round.dueAt && (
                  <>
                    {sentence(lateWords(round.lateRule))}
                    {round.lateRule.untilAt && (
                      <>
                        {' '}
                        (<When at={round.lateRule.untilAt} timeZone={timeZone} />)
                      </>
                    )}
                    .{' '}
                  </>
                )}
                {round.proofs > 0 && `${counted(round.proofs, 'proof')} sent.`}
              </p>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
