import type { Metadata } from 'next';
import { Bench } from '@/app/_bench/bench';
import { ConfirmDialog } from '@/app/_ui/ConfirmDialog';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Notice, Page } from '@/app/_ui/Page';
import { BarOnward, BarPlace } from '@/app/_ui/WorkBar';
import { forPage } from '@/lib/http/page';
import { getReferenceBench } from '@/lib/reference/bench';
import { untouchedSpacing } from '@/shared/outline/place-letters';
import { lineWords } from '@/shared/line/line-words';
import { removeReferenceAction } from '../actions';

type Props = {
  params: Promise<{ exerciseId: string; specimenId: string }>;
  searchParams: Promise<{ take?: string; remove?: string }>;
};

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { specimen } = await forPage(getReferenceBench, { specimenId: (await params).specimenId, slot: 1 });
  return { title: `Reference for “${specimen.text}”, ${lineWords(specimen)}` };
}

/** The instructor's bench: a spacing with tolerances and reasons, saved as it is made. */
export default async function ReferenceBench({ params, searchParams }: Props) {
  const { exerciseId, specimenId } = await params;
  const { take, remove } = await searchParams;
  const slot = take === '2' ? 2 : 1;
  const { exercise, specimen, memberId, own, others, repeatability, previousId, nextId, firstTake } = await forPage(
    getReferenceBench,
    { specimenId, slot },
  );
  const list = `/exercises/${exerciseId}/references`;
  return (
    <Page width="workbench">
      {own && remove && (
        <Notice kind="warning" title="Remove it?">
          <p>Sets that were frozen with it, and what was compared with them, stay.</p>
          <RemoveForm referenceId={own.id} />
        </Notice>
      )}
      {own?.started && (
        <Notice title="Carried over">
          This is a start. It becomes a reference with your first change here, or when you accept it in the list.
        </Notice>
      )}
      {slot === 2 && <Notice>{secondTakeWords(firstTake, repeatability)}</Notice>}
      <Bench
        mode="reference"
        pack={specimen.pack}
        size={specimen.size}
        ground={specimen.ground}
        spacing={own?.spacing ?? untouchedSpacing(specimen.pack)}
        tolerances={own?.tolerances ?? specimen.pack.builtIn.map(() => null)}
        reasons={(own?.reasons ?? specimen.pack.builtIn.map(() => null)).map((reason) => reason ?? '')}
        version={own?.version ?? 0}
        draftId={`${specimen.versionId}.${slot}`}
        personKey={memberId}
        tells="everything"
        save={`/api/references/${specimen.versionId}?slot=${slot}`}
        signIn="/sign-in"
        place={
          <BarPlace
            back={{ href: list, label: 'References' }}
            title={slot === 2 ? 'Second take' : 'Reference'}
            line={`“${specimen.text}”, ${lineWords(specimen)}`}
          />
        }
        onward={
          <BarOnward
            previous={previousId && `${list}/${previousId}`}
            next={nextId && `${list}/${nextId}`}
            main={{ href: `/exercises/${exerciseId}`, label: exercise.title }}
          >
            {own && !remove && (
              <Remove
                label={slot === 2 ? 'Remove this take…' : 'Remove this reference…'}
                referenceId={own.id}
                href={`${list}/${specimenId}?take=${slot}&remove=1`}
              />
            )}
          </BarOnward>
        }
        overlays={others.map(({ id, author, spacing }) => ({ id, label: `Reference by ${author}`, spacing }))}
        demonstrations={{
          save: '/api/demonstrations',
          specimenVersionId: specimen.versionId,
          list: `/exercises/${exercise.id}/demonstrations`,
        }}
      />
    </Page>
  );
}

function secondTakeWords(firstTake: boolean, repeatability: number | null): string {
  if (!firstTake) return 'Set the reference first; a second take then shows how well you repeat it.';
  if (repeatability === null)
    return 'Space the line again without looking at your first take, ideally on another day. The difference becomes the tolerance of pairs that have none of their own.';
  return `Your two takes are repeatable within ±${repeatability} thousandths of an em. That is the tolerance of pairs that have none of their own.`;
}

function Remove({ label, referenceId, href }: { label: string; referenceId: string; href: string }) {
  return (
    <ConfirmDialog label={label} title="Remove it?" href={href} form={<RemoveForm referenceId={referenceId} />}>
      <p>Sets that were frozen with it, and what was compared with them, stay.</p>
    </ConfirmDialog>
  );
}

function RemoveForm({ referenceId }: { referenceId: string }) {
  return (
    <Form action={removeReferenceAction} label="Remove it">
      <input type="hidden" name="referenceId" value={referenceId} />
      <SubmitButton kind="grave">Remove it</SubmitButton>
    </Form>
  );
}
