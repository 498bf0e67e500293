import { ButtonLink } from '@/app/_ui/Button';
import { Section } from '@/app/_ui/Section';
import type { ExerciseView } from '@/lib/rows/exercise';
import { withUnit } from '@/shared/text/number';
import { shownChoices, tellingChoices, wordFor } from './setting-words';

/** The brief as students read it, and the settings in words. */
export function BriefPart({ exercise }: { exercise: ExerciseView }) {
  const { settings, brief } = exercise;
  return (
    <Section
      id="brief"
      title="Brief and settings"
      actions={<ButtonLink href={`/exercises/${exercise.id}/plan/brief`}>Change the brief and settings</ButtonLink>}
    >
      {brief.trim() === '' ? (
        <p className="quiet">No brief yet.</p>
      ) : (
        <div className="reading stack">
          {brief.split(/\n{2,}/).map((paragraph, index) => (
            <p key={index}>{paragraph}</p>
          ))}
        </div>
      )}
      <dl className="facts">
        <dt>Before a proof is sent, the bench tells</dt>
        <dd>{wordFor(tellingChoices, settings.benchTells).toLowerCase()}</dd>
        <dt>After it</dt>
        <dd>{wordFor(tellingChoices, settings.benchTellsAfterProof).toLowerCase()}</dd>
        <dt>Students see references</dt>
        <dd>{wordFor(shownChoices, settings.referencesShown).toLowerCase()}</dd>
        <dt>Tolerance where a reference gives none</dt>
        <dd>±{withUnit(settings.tolerance, 'thousandths of an em')}</dd>
        <dt>Smallest size of use</dt>
        <dd>
          {settings.smallestSize ? withUnit(settings.smallestSize.value, settings.smallestSize.unit, 1) : 'not named'}
        </dd>
        <dt>Names while marking</dt>
        <dd>{settings.namesHidden ? 'hidden' : 'shown'}</dd>
      </dl>
    </Section>
  );
}
