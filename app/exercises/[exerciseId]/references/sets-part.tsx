import { Form } from '@/app/_ui/Form';
import { Notice } from '@/app/_ui/Notice';
import { Section } from '@/app/_ui/Section';
import { SubmitButton } from '@/app/_ui/SubmitButton';
import { When } from '@/app/_ui/When';
import { counted } from '@/shared/text/number';
import { enforceReferencesAction } from './actions';

type Set = { id: string; number: number; createdAt: Date; madeBy: string | null; references: number; used: boolean };
type Props = { exerciseId: string; sets: Set[]; changed: boolean; timeZone: string };

/** The frozen sets, newest first, and putting what has changed since in force. */
export function SetsPart({ exerciseId, sets, changed, timeZone }: Props) {
  const newest = sets[0];
  return (
    <Section
      title="In force"
      lead={
        newest
          ? undefined
          : 'No reference was there when this was published, so proofs are measured and compared with nothing.'
      }
    >
      {newest && (
        <p>
          Proofs are compared with set {newest.number}, of <When at={newest.createdAt} timeZone={timeZone} />.
        </p>
      )}
      {changed && (
        <Notice title={newest ? `References have changed since set ${newest.number}` : 'There are references now'}>
          <p>
            Proofs are compared with them only when you say so. Comparisons that were made before, and what was released
            with them, stay as they are.
          </p>
        </Notice>
      )}
      <Form action={enforceReferencesAction} label="Put the references in force">
        <input type="hidden" name="exerciseId" value={exerciseId} />
        {changed && (
          <div className="actions">
            <SubmitButton pending="Comparing…">Put them in force and compare all proofs again</SubmitButton>
          </div>
        )}
      </Form>
      {sets.length > 1 && (
        <details className="more">
          <summary>Earlier sets</summary>
          <ul>
            {sets.slice(1).map((set) => (
              <li key={set.id}>
                Set {set.number}, <When at={set.createdAt} timeZone={timeZone} />
                {set.madeBy && `, ${set.madeBy}`}: {counted(set.references, 'reference take')},{' '}
                {set.used ? 'proofs were compared with it' : 'no proof was compared with it'}
              </li>
            ))}
          </ul>
        </details>
      )}
    </Section>
  );
}
