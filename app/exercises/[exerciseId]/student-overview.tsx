import Link from 'next/link';
import { ButtonLink } from '@/app/_ui/Button';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { roomsAtOneScale } from '@/app/_line/relative-size';
import { EmptyState, Notice, Page, PageHeader, Section } from '@/app/_ui/Page';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { When } from '@/app/_ui/Status';
import type { Work } from '@/lib/work/overview';
import { lineWords } from '@/shared/line/line-words';
import { counted } from '@/shared/text/number';
import { quoted } from '@/shared/text/quoted';
import type { FontUnits } from '@/shared/units';
import { CriteriaWords, RoundWords } from './round-words';
import { SendProofForm } from './send-proof-form';
import { sameTextHref } from './same-text/same-text-line';

/** The student's exercise: the task, the due date, the lines, and sending them. */
export function StudentOverview({ work, requestKey }: { work: Work; requestKey: string }) {
  const { exercise, course, current, next, lines, proofs } = work;
  const untouched = lines.filter((line) => line.untouched).length;
  const rooms = roomsAtOneScale(lines);
  const first = lines.find((line) => line.untouched) ?? lines[0];
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
              {lines.some((line) => !line.untouched) ? 'Continue spacing' : 'Start with the first line'}
            </ButtonLink>
          ) : undefined
        }
      />
      <div className="work-columns">
        <div className="stack">
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
              <section className="section" aria-labelledby="lines-title">
                <h2 id="lines-title" className="visually-hidden">
                  Lines
                </h2>
                {lines.length === 0 && <p>This exercise has no lines yet. Your instructor can add some at any time.</p>}
                {lines.length > 1 && (
                  <p className="quiet note-size">Each line as large beside the others as it will be in use.</p>
                )}
                <ol className="work-lines">
                  {lines.map((line, index) => (
                    <WorkLine
                      key={line.versionId}
                      exerciseId={exercise.id}
                      line={line}
                      room={rooms[index]!}
                      place={index + 1}
                      settings={lines.filter(({ text }) => text === line.text).length}
                    />
                  ))}
                </ol>
                {lines.length > 0 && current.takesProofs && (
                  <p className="work-send">
                    <span>
                      <strong>
                        {lines.length - untouched} of {counted(lines.length, 'line')}
                      </strong>{' '}
                      spaced
                    </span>
                    {current.dueAt && (
                      <span className="quiet">
                        due <When short yours at={current.dueAt} timeZone={course.timeZone} />
                      </span>
                    )}
                    <ButtonLink small href="#send">
                      Send a proof…
                    </ButtonLink>
                  </p>
                )}
              </section>
              {lines.length > 0 && <SendProof work={work} requestKey={requestKey} />}
            </>
          )}
          {work.demonstrations.length > 0 && (
            <Section title="Demonstrations" lead="How an instructor spaced a line, step by step, with reasons.">
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
                    <span className="quiet">{quoted(proof.reasoning)}</span>
                  </li>
                ))}
              </ol>
            </Section>
          )}
        </div>
        <aside className="stack" aria-label="Dates, brief and criteria">
          <RoundWords work={work} />
          {exercise.safetySigns && (
            <Notice kind="caution" title="Signs that people’s safety depends on">
              Spacing on traffic, exit, safety and accessibility signs is set by codes and standards and not by eye.
              What is done here is an exercise; on a real sign, the local code and a licensed practitioner decide.
            </Notice>
          )}
          {exercise.brief && (
            <Section title="Brief">
              <Brief text={exercise.brief} />
            </Section>
          )}
          <CriteriaWords exerciseId={exercise.id} />
        </aside>
      </div>
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

/** `settings`: how many lines of the exercise have these words. */
type Line = Work['lines'][number];
type Props = { exerciseId: string; line: Line; room: FontUnits; place: number; settings: number };

/** One line of the exercise: its spacing now, its face and size, and its progress. */
function WorkLine({ exerciseId, line, room, place, settings }: Props) {
  const { pack, ground } = line;
  return (
    <li className="work-line">
      <Link
        href={`/exercises/${exerciseId}/bench/${line.specimenId}`}
        aria-label={`Line ${place}: ${line.text}. ${progress(line)}. Space it on the bench`}
      >
        <SheetFrame ground={ground}>
          <LineDrawing pack={pack} spacing={line.spacing} room={room} label={null} />
        </SheetFrame>
      </Link>
      <p className="work-line-words">
        <span>
          {place}. {lineWords(line)}
          {line.remark && <>. {line.remark}</>}
        </span>
        <strong>{progress(line)}</strong>
        <span>
          <Link href={`/exercises/${exerciseId}/bench/${line.specimenId}?trial=1`}>
            Try it without sending<span className="visually-hidden"> (line {place})</span>
          </Link>
          {settings > 1 && (
            <>
              ,{' '}
              <Link href={sameTextHref(exerciseId, line.text)}>
                all {settings} spacings of it<span className="visually-hidden"> (line {place})</span>
              </Link>
            </>
          )}
        </span>
      </p>
    </li>
  );
}

function progress(line: Work['lines'][number]): string {
  if (line.untouched) return line.began ? 'Untouched: it begins wrong on purpose' : 'Untouched';
  return line.changedSinceSent ? 'Changed since the last proof' : 'As last sent';
}

/** Sending: what will be sent, the statement about it, and a warning while lines are untouched. */
function SendProof({ work, requestKey }: { work: Work; requestKey: string }) {
  const { current, lines, exercise, personKey } = work;
  if (!current?.takesProofs) return null;
  const untouched = lines.filter((line) => line.untouched).length;
  return (
    <Section
      title={`Send a proof for round ${current.number}`}
      lead="A proof contains every line as it is now. It never changes; you can send another while the round is open."
      id="send"
    >
      {untouched > 0 && (
        <p>
          {untouched === lines.length
            ? 'None of the lines has been spaced yet'
            : `${untouched} of ${lines.length} lines ${untouched === 1 ? 'is' : 'are'} untouched`}
          . You can send them so; the marker sees it as your choice.
        </p>
      )}
      <SendProofForm
        exerciseId={exercise.id}
        requestKey={requestKey}
        personKey={personKey}
        drafts={lines.map(({ versionId, draftId, draftVersion, spacing }) => ({
          versionId,
          draftId,
          version: draftVersion,
          spacing,
        }))}
      />
    </Section>
  );
}
