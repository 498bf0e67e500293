import { Form, SubmitButton } from '@/app/_ui/Form';
import type { ReferencesShown } from '@/shared/schemas/exercise';
import { removeDemonstrationAction, showDemonstrationAction } from './actions';

type One = { id: string; title: string; version: number };

const Which = ({ one }: { one: One }) => (
  <>
    <input type="hidden" name="demonstrationId" value={one.id} />
    <input type="hidden" name="version" value={one.version} />
  </>
);

/** Shows a demonstration to the course, or hides it again. */
export function ShowForm({ one, shown }: { one: One; shown: boolean }) {
  return (
    <Form action={showDemonstrationAction} label={shown ? `Withdraw “${one.title}”` : `Show “${one.title}”`} inline>
      <Which one={one} />
      <input type="hidden" name="shown" value={shown ? 'no' : 'yes'} />
      <SubmitButton kind={shown ? 'usual' : 'main'} small>
        {shown ? 'Show it no longer' : 'Show it to the course'}
      </SubmitButton>
    </Form>
  );
}

/** Archives it, or restores it. */
export function RemoveForm({ one, removed }: { one: One; removed: boolean }) {
  return (
    <Form
      action={removeDemonstrationAction}
      label={removed ? `Restore “${one.title}”` : `Remove “${one.title}”`}
      inline
    >
      <Which one={one} />
      <input type="hidden" name="removed" value={removed ? 'no' : 'yes'} />
      <SubmitButton kind={removed ? 'usual' : 'text'} small>
        {removed ? 'Restore' : 'Remove it'}
      </SubmitButton>
    </Form>
  );
}

/** What showing means where the exercise has its own rule for references. */
export function showingWords(referencesShown: ReferencesShown): string {
  const rule: Record<ReferencesShown, string> = {
    never: 'This exercise never shows references to students',
    'after-release': 'This exercise shows references after a release',
    always: 'This exercise shows references from the start',
  };
  const then =
    referencesShown === 'always'
      ? 'and this one is seen with them'
      : 'but a demonstration that is shown can be seen by the whole course at once';
  return `A demonstration is an instructor’s spacing, and so a kind of reference. ${rule[referencesShown]}, ${then}.`;
}
