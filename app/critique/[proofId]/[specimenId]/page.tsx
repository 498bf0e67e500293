import type { Metadata } from 'next';
import Link from 'next/link';
import { Desk } from '@/app/critique/_desk/desk';
import { TwoMarkers } from '@/app/critique/[proofId]/[specimenId]/two-markers';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { chooseProofAction } from './actions';
import { Notice, Page } from '@/app/_ui/Page';
import { BarPlace } from '@/app/_ui/WorkBar';
import { When } from '@/app/_ui/Status';
import { type CritiqueLine, getProofLine } from '@/lib/review/desk';
import { forPage } from '@/lib/http/page';
import { counted, withUnit } from '@/shared/text/number';
import { quoted } from '@/shared/text/quoted';
import style from '@/app/critique/_desk/desk.module.css';

type Props = { params: Promise<{ proofId: string; specimenId: string }>; searchParams: Promise<{ section?: string }> };

export const metadata: Metadata = { title: 'Critique' };

/** One line of one proof at the desk. */
export default async function CritiquePage({ params, searchParams }: Props) {
  const { proofId, specimenId } = await params;
  const line = await forPage(getProofLine, {
    proof: decodeURIComponent(proofId),
    specimenId,
    section: (await searchParams).section ?? null,
  });
  const { proof, exercise, course, round, queue, go } = line;
  const inSection = queue.section ? `?section=${queue.section.id}` : '';
  const roundPage = `/exercises/${exercise.id}/rounds/${round.number}`;
  const queuePage = `${roundPage}/critique${inSection}`;
  const face = line.pack.face;
  return (
    <Page width="workbench">
      <div className="work-bar">
        <BarPlace
          back={{ href: queuePage, label: `Critique of round ${round.number}` }}
          title={`${line.line.text}, by ${proof.shownAs}`}
          line={
            <>
              Line {line.line.place} of {line.line.of}, {face ? `${face.family} ${face.style}` : 'lettering'},{' '}
              {withUnit(line.line.size.value, line.line.size.unit)}, {line.line.ground} ground
            </>
          }
        />
        <nav className={style.go} aria-label="On to">
          <GoTo to={go.previousStudent} keyName="P">
            Previous student
          </GoTo>
          <GoTo to={go.nextStudent} keyName="p">
            Next student
          </GoTo>
          <GoTo to={go.previousLine} keyName="N">
            Previous line
          </GoTo>
          <GoTo to={go.nextLine} keyName="n">
            Next line
          </GoTo>
          <GoTo to={`${roundPage}/specimens/${specimenId}`} keyName="a">
            This line across the class
          </GoTo>
          {line.two.slot === 'second' && (
            <Link href={`/exercises/${exercise.id}/rounds/${round.number}/second`}>Second marking</Link>
          )}
        </nav>
      </div>
      <p className={style.about}>
        <span>{quoted(proof.reasoning)}</span>
        <span className="quiet">
          {queue.place > 0
            ? `Proof ${queue.place} of ${queue.of} in ${queue.section ? `the queue of ${queue.section.name}` : 'the queue'}`
            : 'Not in the queue'}
          , {queue.done} marked{queue.skipped && ', skipped by you'}
          {proof.section && `; section ${proof.section}`}
          {proof.receivedAt && (
            <>
              ; received <When at={proof.receivedAt} timeZone={course.timeZone} short />
            </>
          )}
        </span>
      </p>
      <ul className={style.lines} aria-label="Lines of this proof">
        {line.lines.map((one) => (
          <li key={one.specimenId}>
            <Link
              href={`/critique/${proof.token}/${one.specimenId}${inSection}`}
              prefetch={false}
              aria-current={one.specimenId === specimenId ? 'page' : undefined}
            >
              {one.text}
            </Link>
          </li>
        ))}
      </ul>
      <TwoMarkers line={line} agreement={`/exercises/${exercise.id}/rounds/${round.number}/agreement`} />
      <SentAgain line={line} />
      {!proof.counts && (
        <Notice kind="warning">
          This proof doesn’t count in its round: a later one was sent, or an earlier one was already being marked. Notes
          on it can be written; the instructor can let it count.
        </Notice>
      )}
      {!proof.counts && line.mayChoose && (
        <Form action={chooseProofAction} label="Let this proof count">
          <input type="hidden" name="proof" value={proof.token} />
          <input type="hidden" name="specimenId" value={specimenId} />
          <div className="actions">
            <SubmitButton kind="usual" small>
              Let this proof count
            </SubmitButton>
          </div>
        </Form>
      )}
      {line.line.remark && <p className="quiet">Remark of the exercise: {line.line.remark}</p>}
      <Desk key={`${proof.token}/${specimenId}`} desk={line} />
    </Page>
  );
}

/** What was said on an earlier proof of the round, before the student sent this one. */
function SentAgain({ line }: { line: CritiqueLine }) {
  return line.sentAgain.map(({ number, token, notes, marks }) => (
    <Notice key={token} kind="warning" title="Sent again: look again">
      <p>
        The student sent this proof after critique of{' '}
        <Link href={`/critique/${token}/${line.line.specimenId}`} prefetch={false}>
          proof {number}
        </Link>{' '}
        had begun. Notes on unchanged gaps came along
        {notes > 0 && <>; {counted(notes, 'note')} on changed gaps can be read there</>}.
      </p>
      {marks.length > 0 && (
        <p>
          Marked there: {marks.map(({ title, level }) => `${title}: ${level}`).join('; ')}. Mark this proof to make them
          count.
        </p>
      )}
    </Notice>
  ));
}

function GoTo({ to, keyName, children }: { to: string | null; keyName: string; children: string }) {
  if (to === null) return null;
  return (
    <Link href={to} prefetch={false} aria-keyshortcuts={keyName}>
      {children}
    </Link>
  );
}
