import type { Metadata } from 'next';
import { ExportLine } from '@/app/_released/export-line';
import { ButtonLink } from '@/app/_ui/Button';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { Notice, Page, PageHeader, Section } from '@/app/_ui/Page';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { When } from '@/app/_ui/Status';
import { forPage } from '@/lib/http/page';
import { getProof } from '@/lib/work/proofs';
import { getRelease } from '@/lib/release/released';
import { withUnit } from '@/shared/text/number';
import { Released } from './released';

type Props = { params: Promise<{ proofId: string }>; searchParams: Promise<{ sent?: string; answered?: string }> };

const statusWords = {
  counts: 'Yes, this proof counts in its round.',
  replaced: 'No, another proof of yours counts in this round.',
  kept: 'No: an earlier proof was already being marked. This one is kept, and counts only if your instructor picks it.',
};

export const metadata: Metadata = { title: 'Proof' };

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
        title={`Proof ${proof.number}, round ${proof.round.number}`}
        trail={[
          { href: `/courses/${proof.course.id}`, label: proof.course.title },
          { href: `/exercises/${proof.exercise.id}`, label: proof.exercise.title },
        ]}
        actions={<ButtonLink href={`/exercises/${proof.exercise.id}`}>Back to the exercise</ButtonLink>}
      />
      {sent && proof.mine && (
        <Notice live="polite" title="Received">
          Your proof was received in full on {received}. You can close the page.
          {proof.critiqueBegun &&
            proof.counts === 'counts' &&
            ' Critique of your earlier proof had begun: notes on gaps you haven’t changed go along with this one, and its marks will be looked at again.'}
        </Notice>
      )}
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
        <dt>Reasoning</dt>
        <dd>{proof.reasoning}</dd>
        <dt>Lines</dt>
        <dd>
          {proof.lines.length}
          {unmeasured.length > 0 && <> (not measured: {unmeasured.map(({ text }) => text).join(', ')})</>}
        </dd>
      </dl>
      {answered && proof.mine && <Notice live="polite">Your reply is under its note.</Notice>}
      <Released
        shown={shown}
        proofId={proof.id}
        exerciseId={proof.exercise.id}
        timeZone={proof.course.timeZone}
        drawn={proof.lines}
        mine={proof.mine}
      />
      {!shown.release && (
        <Section title="As it was sent">
          <ol className="work-lines">
            {proof.lines.map((line, index) => (
              <li className="work-line" key={line.itemId}>
                <SheetFrame ground={line.ground}>
                  <LineDrawing pack={line.pack} spacing={line.spacing} />
                </SheetFrame>
                <p className="work-line-words">
                  {index + 1}. {line.pack.face ? `${line.pack.face.family} ${line.pack.face.style}` : 'Lettering'},{' '}
                  {withUnit(line.size.value, line.size.unit)}, {line.ground} ground
                </p>
                <ExportLine proofId={proof.id} specimenId={line.specimenId} text={line.text} />
              </li>
            ))}
          </ol>
        </Section>
      )}
    </Page>
  );
}
