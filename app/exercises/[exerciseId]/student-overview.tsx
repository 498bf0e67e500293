import { ButtonLink } from '@/app/_ui/Button';
import { EmptyState } from '@/app/_ui/EmptyState';
import { Notice } from '@/app/_ui/Notice';
import { Page } from '@/app/_ui/Page';
import { PageHeader } from '@/app/_ui/PageHeader';
import { Section } from '@/app/_ui/Section';
import { When } from '@/app/_ui/When';
import type { Work } from '@/lib/work/overview';
import { CriteriaWords } from './criteria-words';
import { RoundWords } from './round-words';
import { SendProof } from './send-proof';
import { WorkLine } from './work-line';

/** The exercise as its student sees it: what is asked, by when, the lines, and sending them. */
export function StudentOverview({ work, requestKey }: { work: Work; requestKey: string }) {
  const { exercise, course, current, next, lines, proofs } = work;
  const first = lines.find(({ draftVersion }) => draftVersion === 0) ?? lines[0];
  return (
    <Page width="wide">
      <PageHeader
        title={exercise.title}
        trail={[{ href: `/courses/${course.id}`, label: course.title }]}
        lead={
          current
            ? `Round ${current.number} of ${work.rounds.length}${current.title ? `: ${current.title}` : ''}`
            : 'Not open yet'
        }
        actions={
          current && first ? (
            <ButtonLink kind="main" href={`/exercises/${exercise.id}/bench/${first.specimenId}`}>
              {lines.some(({ draftVersion }) => draftVersion > 0) ? 'Go on spacing' : 'Begin with the first line'}
            </ButtonLink>
          ) : undefined
        }
      />
      <RoundWords work={work} />
      {exercise.safetySigns && (
        <Notice kind="caution" title="Signs that people’s safety depends on">
          Spacing on traffic, exit, safety and accessibility signs is set by codes and standards and not by eye. What is
          done here is an exercise; on a real sign, the local code and a licensed practitioner decide.
        </Notice>
      )}
      {exercise.brief && (
        <Section title="Brief">
          <Brief text={exercise.brief} />
        </Section>
      )}
      <CriteriaWords exerciseId={exercise.id} />
      {current === null ? (
        <EmptyState title="Nothing to space yet">
          {next?.opensAt ? (
            <>
              The lines appear here when round {next.number} opens:{' '}
              <When at={next.opensAt} timeZone={course.timeZone} />.
            </>
          ) : (
            'The lines appear here when the next round opens; your instructor decides when.'
          )}
        </EmptyState>
      ) : (
        <>
          <Section title="Lines" lead="Space each line on the bench. Every change is kept by itself.">
            {lines.length === 0 && <p>This exercise has no lines yet. Your instructor can add some at any time.</p>}
            <ol className="work-lines">
              {lines.map((line, index) => (
                <WorkLine
                  key={line.versionId}
                  exerciseId={exercise.id}
                  line={line}
                  place={index + 1}
                  settings={lines.filter(({ text }) => text === line.text).length}
                />
              ))}
            </ol>
          </Section>
          {lines.length > 0 && <SendProof work={work} requestKey={requestKey} />}
        </>
      )}
      {work.demonstrations.length > 0 && (
        <Section title="Demonstrations" lead="How a teacher set a line, step by step, with reasons.">
          <ul className="plain-list">
            {work.demonstrations.map(({ id, title, line }) => (
              <li key={id}>
                <a href={`/exercises/${exercise.id}/demonstrations/${id}`}>{title}</a>, on “{line}”
              </li>
            ))}
          </ul>
        </Section>
      )}
      {proofs.length > 0 && (
        <Section title="Proofs you have sent" id="proofs">
          <ol className="plain-list">
            {proofs.map((proof) => (
              <li key={proof.id}>
                <a href={`/proofs/${proof.id}`}>
                  Round {proof.round}, proof {proof.number}
                </a>
                , <When at={proof.receivedAt} timeZone={course.timeZone} />
                <br />
                <span className="quiet">“{proof.reasoning}”</span>
              </li>
            ))}
          </ol>
        </Section>
      )}
    </Page>
  );
}

const Brief = ({ text }: { text: string }) => (
  <div className="reading stack">
    {text.split(/\n{2,}/).map((paragraph, index) => (
      <p key={index}>{paragraph}</p>
    ))}
  </div>
);
