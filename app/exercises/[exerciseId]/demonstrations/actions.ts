'use server';
import { removeDemonstration, renameDemonstration, setDemonstrationShown } from '@/lib/work/demonstrations';
import { formAction } from '@/lib/http/form-action';

const which = (form: FormData) => ({
  demonstrationId: String(form.get('demonstrationId') ?? ''),
  version: Number(form.get('version')),
});

export const showDemonstrationAction = formAction(setDemonstrationShown, {
  read: (form) => ({ ...which(form), shown: form.get('shown') === 'yes' }),
  done: ({ shown }) => (shown ? 'The course sees it now.' : 'Only instructors and assistants see it now.'),
});

export const removeDemonstrationAction = formAction(removeDemonstration, {
  read: (form) => ({ ...which(form), removed: form.get('removed') === 'yes' }),
  then: ({ exerciseId, demonstrationId, removed }) =>
    `/exercises/${exerciseId}/demonstrations${removed ? `?removed=${demonstrationId}` : ''}`,
});

export const retitleDemonstrationAction = formAction(renameDemonstration, {
  read: (form) => ({ ...which(form), title: String(form.get('title') ?? '') }),
  done: () => 'It has its new title.',
});
