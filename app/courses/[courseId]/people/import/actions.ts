'use server';
import { importRoster } from '@/lib/course/roster/import-roster';
import { previewRoster } from '@/lib/course/roster/preview-roster';
import { formAction } from '@/lib/http/form-action';
import { counted } from '@/shared/text/number';
import { givenIn } from './read-form';

export const previewRosterAction = formAction(previewRoster, {
  read: givenIn,
  done: ({ unclear, counts }) =>
    unclear ??
    (counts.faults > 0
      ? `${counted(counts.faults, 'row')} can’t be imported as it stands.`
      : 'Look through the rows, then import them.'),
  show: (plan) => ({ plan: JSON.stringify(plan) }),
});

export const importRosterAction = formAction(importRoster, {
  read: (form) => ({ ...givenIn(form), makeSections: form.get('makeSections') === 'yes' }),
  done: ({ counts }) =>
    counts.newPeople + counts.joining === 0
      ? 'Everybody is here already: nothing was changed.'
      : `${counted(counts.newPeople + counts.joining, 'person', 'people')} came into the course, ${counted(counts.newPeople, 'of them with a new account', 'of them with new accounts')}.`,
  show: ({ links, byMail, expiresAt }) => ({
    links: JSON.stringify(links),
    byMail: byMail ? 'yes' : 'no',
    expires: expiresAt.toISOString().slice(0, 10),
  }),
});
