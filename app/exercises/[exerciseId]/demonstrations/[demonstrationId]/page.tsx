import type { Metadata } from 'next';
import { Demonstration } from '@/app/_bench/demonstration';
import { ButtonLink } from '@/app/_ui/Button';
import { Disclosure } from '@/app/_ui/Disclosure';
import { Field } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Notice, Page, PageHeader } from '@/app/_ui/Page';
import { getDemonstration } from '@/lib/work/demonstrations';
import { forPage } from '@/lib/http/page';
import { teaches } from '@/shared/schemas/course';
import { retitleDemonstrationAction } from '../actions';
import { RemoveForm, ShowForm, showingWords } from '../show-form';

export const metadata: Metadata = { title: 'Demonstration' };

type Props = { params: Promise<{ exerciseId: string; demonstrationId: string }> };

/** A recorded demonstration, step by step. Staff preview it here before they show it. */
export default async function DemonstrationPage({ params }: Props) {
  const { exerciseId, demonstrationId } = await params;
  const {
    exercise,
    course,
    role,
    personKey,
    accommodations,
    demonstration: one,
    mayChange,
  } = await forPage(getDemonstration, { exerciseId, demonstrationId });
  const forStaff = teaches(role);
  return (
    <Page width="full">
      <PageHeader
        title={one.title}
        kicker="Demonstration"
        trail={[
          { href: `/courses/${course.id}`, label: course.title },
          { href: `/exercises/${exerciseId}`, label: exercise.title },
          { href: `/exercises/${exerciseId}/demonstrations`, label: 'Demonstrations' },
        ]}
        lead={`By ${one.author}. One way to set the line; others can be right as well.`}
        actions={
          one.removedAt ? undefined : (
            <ButtonLink small href={`/exercises/${exerciseId}/bench/${one.specimenId}`}>
              {forStaff ? 'Try the line on the bench' : 'Your own line on the bench'}
            </ButtonLink>
          )
        }
      />
      {one.removedAt && (
        <Notice title="Removed">
          <p>Only instructors and assistants who open this address see it.</p>
          {mayChange && <RemoveForm one={one} removed />}
        </Notice>
      )}
      {forStaff && !one.removedAt && (
        <Notice title={one.shownAt ? 'The course sees it' : 'Only instructors and assistants see it'}>
          <p>{showingWords(exercise.referencesShown)}</p>
          {mayChange && <ShowForm one={one} shown={one.shownAt !== null} />}
        </Notice>
      )}
      <Demonstration
        pack={one.pack}
        size={one.size}
        ground={one.ground}
        recorded={one.recorded}
        personKey={personKey}
        tells={forStaff ? 'everything' : 'nothing'}
        accommodations={{ workingView: accommodations.workingView, singleKeysOff: accommodations.singleKeysOff }}
      />
      {mayChange && !one.removedAt && (
        <Disclosure summary="Change the title">
          <Form action={retitleDemonstrationAction} label="Change the title">
            <input type="hidden" name="demonstrationId" value={one.id} />
            <input type="hidden" name="version" value={one.version} />
            <Field name="title" label="Title" defaultValue={one.title} />
            <div className="actions">
              <SubmitButton kind="usual">Change the title</SubmitButton>
            </div>
          </Form>
        </Disclosure>
      )}
    </Page>
  );
}
