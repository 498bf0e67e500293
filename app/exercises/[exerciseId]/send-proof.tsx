import { Section } from '@/app/_ui/Section';
import type { Work } from '@/lib/work/overview';
import { SendProofForm } from './send-proof-form';

/** Sending: what goes, why it is set so, and a warning while lines are untouched. */
export function SendProof({ work, requestKey }: { work: Work; requestKey: string }) {
  const { current, lines, exercise, personKey } = work;
  if (!current?.takesProofs) return null;
  const untouched = lines.filter(({ draftVersion }) => draftVersion === 0).length;
  return (
    <Section
      title={`Send a proof for round ${current.number}`}
      lead="A proof is all lines as they stand now. It never changes afterwards; you can send another while the round lasts."
      id="send"
    >
      {untouched > 0 && (
        <p>
          {untouched === lines.length
            ? 'None of the lines has been spaced yet'
            : `${untouched} of ${lines.length} lines ${untouched === 1 ? 'is' : 'are'} as the face comes`}
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
