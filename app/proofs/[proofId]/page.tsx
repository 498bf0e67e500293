import type { Metadata } from 'next';
import type { ComponentProps } from 'react';
import { ExportLines, TakeSheet } from '@/app/_released/export-line';
import { ButtonLink } from '@/app/_ui/Button';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { roomsAtOneScale } from '@/app/_line/relative-size';
import { Notice, Page, PageHeader, Section } from '@/app/_ui/Page';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { When } from '@/app/_ui/Status';
import { forPage } from '@/lib/http/page';
import { getProof } from '@/lib/work/proofs';
import { getRelease } from '@/lib/release/released';
import { lineWords } from '@/shared/line/line-words';
import { exportAddress } from '@/shared/schemas/export';
import { withUnit } from '@/shared/text/number';
import { quoted } from '@/shared/text/quoted';
import { Released } from './released';

type Props = { params: Promise<{ proofId: string }>; searchParams: Promise<{ sent?: string; answered?: string }> };

const statusWords = {
  counts: 'Yes, this proof counts in its round.',
  replaced: 'No, another proof of yours counts in this round.',
  kept: 'No: an earlier proof was already being marked. This one is kept, and counts only if your instructor picks it.',
};

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { exercise, round, number } = await forPage(getProof, { proofId: (await params).proofId });
  return { title: `${exercise.title}: round ${round.number}, proof ${number}` };
}

/**
 * The receipt: what was sent and when the server received it; then what was released from it, or each line as it was
 * sent.
 */
export default async function ProofPage({ params, searchParams }: Props) {
  const { proofId } = await params;
  const [proof, shown] = await Promise.all([forPage(getProof, { proofId }), forPage(getRelease, { proofId })]);
  const { sent, answered } = await searchParams;
  const received = <When at={proof.receivedAt} timeZone={proof.course.timeZone} />;
  const unmeasured = proof.lines.filter(({ measured }) => !measured);
  return (
    <Page width="wide">
      <PageHeader
        title={`${proof.exercise.title}: round ${proof.round.number}, proof ${proof.number}`}
        trail={[
          { href: `/courses/${proof.course.id}`, label: proof.course.title },
          { href: `/exercises/${proof.exercise.id}`, label: proof.exercise.title },
        ]}
        lead={quoted(proof.reasoning)}
        actions={
          <>
            {shown.release && proof.mine ? (
              <ButtonLink kind="main" href={`/exercises/${proof.exercise.id}`}>
                Continue from here in the next round
              </ButtonLink>
            ) : (
              <ButtonLink href={`/exercises/${proof.exercise.id}`}>Back to the exercise</ButtonLink>
            )}
            <ButtonLink href="#export">Print and export</ButtonLink>
          </>
        }
      />
      {sent && proof.mine && (
        <Notice live="polite" title="Received">
          Your proof was received in full on {received}. You can close the page.
          {proof.critiqueBegun &&
            proof.counts === 'counts' &&
            ' Critique of your earlier proof had begun: notes on gaps you haven’t changed go along with this one, and its marks will be looked at again.'}
        </Notice>
      )}
      {answered && proof.mine && <Notice live="polite">Your reply is under its note.</Notice>}
      <Released
        shown={shown}
        proofId={proof.id}
        exerciseId={proof.exercise.id}
        drawn={proof.lines}
        timeZone={proof.course.timeZone}
        mine={proof.mine}
      />
      {!shown.release && <AsSent lines={proof.lines} />}
      <Section title="About this proof">
        <dl className="facts">
          <dt>Received</dt>
          <dd>
            {received}
            {proof.late && (
              <>
                {' '}
                (late by {proof.late.days === 1 ? 'one started day' : `${proof.late.days} started days`}
                {proof.late.deductPercent > 0 && <>; {withUnit(proof.late.deductPercent, '%')} is deducted</>})
              </>
            )}
          </dd>
          <dt>Counts</dt>
          <dd>{statusWords[proof.counts]}</dd>
          <dt>Lines</dt>
          <dd>
            {proof.lines.length}
            {unmeasured.length > 0 && <> (not measured: {unmeasured.map(({ text }) => text).join(', ')})</>}
          </dd>
        </dl>
      </Section>
      <Exports
        proofId={proofId}
        lines={proof.lines.map((line) => ({ ...line, words: lineWords(line) }))}
        released={shown.release !== null}
      />
    </Page>
  );
}

/** Each line as it was sent, before anything is released. */
function AsSent({ lines }: { lines: Awaited<ReturnType<typeof getProof>>['lines'] }) {
  const rooms = roomsAtOneScale(lines);
  return (
    <Section
      title="As it was sent"
      lead={lines.length > 1 ? 'Each line as large beside the others as it will be in use.' : undefined}
    >
      <ol className="work-lines">
        {lines.map((line, index) => (
          <li className="work-line" key={line.itemId}>
            <SheetFrame ground={line.ground}>
              <LineDrawing pack={line.pack} spacing={line.spacing} under={line.began} room={rooms[index]} />
            </SheetFrame>
            <p className="work-line-words">
              {index + 1}. {lineWords(line)}
              {line.began && '; the outlines under it are what the line began from'}
            </p>
          </li>
        ))}
      </ol>
    </Section>
  );
}

/** Everything that leaves the page on paper or as a file, once. */
function Exports({ proofId, lines, released }: ComponentProps<typeof ExportLines> & { released: boolean }) {
  return (
    <Section title="Print and export" id="export">
      {released && (
        <TakeSheet
          action={exportAddress('sheets', proofId)}
          summary="The critique sheet on paper"
          button="Sheet as PDF"
        />
      )}
      <ExportLines proofId={proofId} lines={lines} />
      {released && (
        <p className="note-size">
          <a href={exportAddress('released-notes', proofId)} download>
            The notes as W3C Web Annotations (JSON-LD)
          </a>
          , for other programs to read.
        </p>
      )}
    </Section>
  );
}
