import type { Metadata } from 'next';
import { ButtonLink } from '@/app/_ui/Button';
import { EmptyState } from '@/app/_ui/EmptyState';
import { Notice } from '@/app/_ui/Notice';
import { Page } from '@/app/_ui/Page';
import { PageHeader } from '@/app/_ui/PageHeader';
import { Section } from '@/app/_ui/Section';
import { standAtExercise } from '@/lib/exercise/stand-at-exercise';
import { forPage } from '@/lib/http/page';
import { listReferences } from '@/lib/reference/list-references';
import { counted } from '@/shared/text/number';
import { StaffFrame } from '../staff-frame';
import { ReferenceLine } from './reference-line';
import { SetsPart } from './sets-part';

export const metadata: Metadata = { title: 'References' };

type Props = { params: Promise<{ exerciseId: string }>; searchParams: Promise<{ carried?: string; left?: string }> };

/** Who has set which line, what is still only a start, and the sets that proofs are compared with. */
export default async function References({ params, searchParams }: Props) {
  const { exerciseId } = await params;
  const { carried, left } = await searchParams;
  const [{ role }, { exercise, course, specimens, sets, changed }] = await Promise.all([
    forPage(standAtExercise, { exerciseId }),
    forPage(listReferences, { exerciseId }),
  ]);
  const referenced = specimens.filter(({ references }) => references.some(({ started }) => !started)).length;
  return (
    <>
      <StaffFrame exercise={exercise} current="references" mayPlan={role === 'instructor'} />
      <Page width="wide">
        <PageHeader
          title="References"
          trail={[{ href: `/courses/${course.id}`, label: course.title }]}
          lead={
            specimens.length === 0
              ? undefined
              : `${referenced} of ${counted(specimens.length, 'specimen')} have one. None is needed; a student is compared with the nearest of several.`
          }
        />
        {carried !== undefined && <Notice live="polite">{carriedWords(Number(carried), Number(left))}</Notice>}
        {specimens.length === 0 ? (
          <EmptyState
            title="No specimens yet"
            action={
              role === 'instructor' ? (
                <ButtonLink href={`/exercises/${exerciseId}/plan/specimens/new`}>Add specimens</ButtonLink>
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
      : `Carried to ${counted(carried, 'specimen')}, as a start. Each counts once you have opened it on the bench or taken it as it is.`;
  return left === 0
    ? done
    : `${done} ${counted(left, 'specimen')} had a reference of yours already and ${left === 1 ? 'was' : 'were'} left alone.`;
}
