import type { Metadata } from 'next';
import { ButtonLink } from '@/app/_ui/Button';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { EmptyState, Notice, Page, PageHeader, Section } from '@/app/_ui/Page';
import { When } from '@/app/_ui/Status';
import { getExerciseRole } from '@/lib/exercise/exercises';
import { forPage } from '@/lib/http/page';
import { listReferences } from '@/lib/reference/references';
import { leadsCourse } from '@/shared/schemas/course';
import { counted } from '@/shared/text/number';
import { StaffFrame } from '../staff-frame';
import { enforceReferencesAction } from './actions';
import { ReferenceLine } from './reference-line';

export const metadata: Metadata = { title: 'References' };

type Props = { params: Promise<{ exerciseId: string }>; searchParams: Promise<{ carried?: string; left?: string }> };

/** Which instructor has set which line, what is still only a start, and the sets that proofs are compared with. */
export default async function References({ params, searchParams }: Props) {
  const { exerciseId } = await params;
  const { carried, left } = await searchParams;
  const [{ role }, { exercise, course, specimens, sets, changed }] = await Promise.all([
    forPage(getExerciseRole, { exerciseId }),
    forPage(listReferences, { exerciseId }),
  ]);
  const referenced = specimens.filter(({ references }) => references.some(({ started }) => !started)).length;
  return (
    <>
      <StaffFrame exercise={exercise} current="references" mayPlan={leadsCourse(role)} />
      <Page width="wide">
        <PageHeader
          title="References"
          trail={[{ href: `/courses/${course.id}`, label: course.title }]}
          lead={
            specimens.length === 0
              ? undefined
              : `${referenced} of ${counted(specimens.length, 'line')} have one. None is needed; a student is compared with the nearest of several.`
          }
        />
        {carried !== undefined && <Notice live="polite">{carriedWords(Number(carried), Number(left))}</Notice>}
        {specimens.length === 0 ? (
          <EmptyState
            title="No lines yet"
            action={
              leadsCourse(role) ? (
                <ButtonLink href={`/exercises/${exerciseId}/plan/specimens/new`}>Add lines</ButtonLink>
              ) : undefined
            }
          >
            References are set on the lines of the exercise, and it has none so far.
          </EmptyState>
        ) : (
          <>
            {exercise.state !== 'draft' && (
              <SetsPart exerciseId={exerciseId} sets={sets} changed={changed} timeZone={course.timeZone} />
            )}
            <Section title="Lines">
              <ol className="specimen-list" role="list">
                {specimens.map((specimen, index) => (
                  <ReferenceLine
                    key={specimen.id}
                    exerciseId={exerciseId}
                    specimen={specimen}
                    place={index + 1}
                    timeZone={course.timeZone}
                  />
                ))}
              </ol>
            </Section>
          </>
        )}
      </Page>
    </>
  );
}

function carriedWords(carried: number, left: number): string {
  const done =
    carried === 0
      ? 'Nothing was carried over.'
      : `Carried to ${counted(carried, 'line')}, as a start. Each counts once you have opened it on the bench or accepted it.`;
  return left === 0
    ? done
    : `${done} ${counted(left, 'line')} had a reference of yours already and ${left === 1 ? 'was' : 'were'} left alone.`;
}

type Set = { id: string; number: number; createdAt: Date; madeBy: string | null; references: number; used: boolean };
type SetsPartProps = { exerciseId: string; sets: Set[]; changed: boolean; timeZone: string };

/** The frozen sets, newest first, and the button that freezes the references as they are now. */
function SetsPart({ exerciseId, sets, changed, timeZone }: SetsPartProps) {
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
      <Form action={enforceReferencesAction} label="Apply the references">
        <input type="hidden" name="exerciseId" value={exerciseId} />
        {changed && (
          <div className="actions">
            <SubmitButton pending="Comparing…">Apply them and compare all proofs again</SubmitButton>
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
