import Link from 'next/link';
import { ReleasedView } from '@/app/_released/released-view';
import { Disclosure } from '@/app/_ui/Disclosure';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Notice } from '@/app/_ui/Page';
import { TextArea } from '@/app/_ui/Field';
import { When } from '@/app/_ui/Status';
import type { DrawnLine, getRelease } from '@/lib/release/released';
import { lineWords } from '@/shared/line/line-words';
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
          <p className="quiet">
            Released <When at={release.releasedAt} timeZone={timeZone} />
            {release.number > 1 && (
              <>; this is correction number {release.number - 1}, it replaces the earlier release</>
            )}
            .{!release.mayAnswer && ' You see it as its student does.'}
          </p>
          <ReleasedView
            snapshot={release.snapshot}
            drawn={drawn}
            answers={release.answers}
            since={release.since}
            underNote={
              release.mayAnswer
                ? (noteId, lastSeq, name) => <Answer name={name} noteId={noteId} lastSeq={lastSeq} proofId={proofId} />
                : undefined
            }
            besideLine={
              mine
                ? (drawing, text) => (
                    <Link href={`/exercises/${exerciseId}/bench/${drawing.specimenId}`}>
                      Continue on the bench
                      <span className="visually-hidden">
                        {' '}
                        with “{text}”, {lineWords(drawing)}
                      </span>
                    </Link>
                  )
                : undefined
            }
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
