import Link from 'next/link';
import { ExportLine, TakeSheet } from '@/app/_released/export-line';
import { ReleasedView } from '@/app/_released/released-view';
import { ButtonLink } from '@/app/_ui/Button';
import { Disclosure } from '@/app/_ui/Disclosure';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Notice } from '@/app/_ui/Page';
import { TextArea } from '@/app/_ui/Field';
import { When } from '@/app/_ui/Status';
import type { DrawnLine, getRelease } from '@/lib/release/released';
import { exportAddress } from '@/shared/schemas/export';
import { answerNoteAction } from './actions';

type Props = {
  shown: Awaited<ReturnType<typeof getRelease>>;
  proofId: string;
  exerciseId: string;
  timeZone: string;
  drawn: readonly DrawnLine[];
  /** Whether the student can go on with the lines: a round is open to them. */
  mine: boolean;
};

/** What was released from this proof: its student can reply and continue, staff see what the student sees. */
export function Released({ shown, proofId, exerciseId, timeZone, drawn, mine }: Props) {
  const { release, elsewhere } = shown;
  return (
    <>
      {elsewhere && (
        <Notice>
          In this round, notes and marks were released from another of your proofs.{' '}
          <Link href={`/proofs/${elsewhere.proofId}`}>See them there</Link>.
        </Notice>
      )}
      {!release && !elsewhere && mine && (
        <p className="quiet">
          Nothing has been released from this proof yet. Notes and marks appear here when the instructor releases the
          round.
        </p>
      )}
      {release && (
        <>
          <p>
            Released <When at={release.releasedAt} timeZone={timeZone} />
            {release.number > 1 && (
              <>; this is correction number {release.number - 1}, it replaces the earlier release</>
            )}
            .{!release.mayAnswer && ' You see it as its student does.'}
          </p>
          {mine && (
            <div className="actions">
              <ButtonLink kind="main" href={`/exercises/${exerciseId}`}>
                Continue from here in the next round
              </ButtonLink>
            </div>
          )}
          <TakeSheet
            action={exportAddress('sheets', proofId)}
            summary="The critique sheet on paper"
            button="Sheet as PDF"
          />
          <p className="note-size">
            <a href={exportAddress('released-notes', proofId)} download>
              The notes as W3C Web Annotations (JSON-LD)
            </a>
            , for other programs to read.
          </p>
          <ReleasedView
            snapshot={release.snapshot}
            drawn={drawn}
            answers={release.answers}
            since={release.since}
            timeZone={timeZone}
            underNote={
              release.mayAnswer
                ? (noteId, lastSeq, name) => <Answer name={name} noteId={noteId} lastSeq={lastSeq} proofId={proofId} />
                : undefined
            }
            besideLine={(specimenId, text) => (
              <>
                {mine && (
                  <p>
                    <Link href={`/exercises/${exerciseId}/bench/${specimenId}`}>
                      Continue this line on the bench, from your last spacing
                    </Link>
                  </p>
                )}
                <ExportLine proofId={proofId} specimenId={specimenId} text={text} />
              </>
            )}
          />
        </>
      )}
    </>
  );
}

function Answer({
  name,
  noteId,
  lastSeq,
  proofId,
}: {
  name: string;
  noteId: string;
  lastSeq: number;
  proofId: string;
}) {
  return (
    <Disclosure summary="Answer">
      <Form action={answerNoteAction} label={`Answer: ${name}`}>
        <input type="hidden" name="noteId" value={noteId} />
        <input type="hidden" name="afterSeq" value={lastSeq} />
        <input type="hidden" name="proofId" value={proofId} />
        <TextArea
          name={`body-${noteId}`}
          label="Your answer"
          hint="The markers of the course read it."
          rows={3}
          maxLength={2000}
        />
        <SubmitButton kind="usual" small pending="Sending…">
          Send the answer
        </SubmitButton>
      </Form>
    </Disclosure>
  );
}
