'use server';

import { allowCourseMaking, createMemberPasswordLink } from '@/lib/course/people';
import { changeRole, changeSection, restoreMember, removeMember, setAccommodations } from '@/lib/course/members';
import { createJoinLink, revokeJoinLink } from '@/lib/course/join';
import { importRoster, previewRoster } from '@/lib/course/roster';
import { formAction } from '@/lib/http/form-action';
import { publicAddress } from '@/lib/http/public-address';
import { counted } from '@/shared/text/number';

export const makeJoinLinkAction = formAction(createJoinLink, {
  read: (form) => ({
    courseId: form.get('courseId'),
    role: form.get('role'),
    sectionId: form.get('sectionId') || null,
    days: form.get('days'),
  }),
  done: ({ role }) => `${role.charAt(0).toUpperCase()}${role.slice(1)} link created.`,
  show: ({ path }) => ({ joinLink: publicAddress(path) }),
});

export const revokeJoinLinkAction = formAction(revokeJoinLink, {
  read: (form) => ({ courseId: form.get('courseId'), joinLinkId: form.get('joinLinkId') }),
  then: (_result, form) => `/courses/${String(form.get('courseId'))}/people#invite`,
});

export const changeRoleAction = formAction(changeRole, {
  read: (form) => ({ ...readMember(form), role: form.get('role') }),
  done: () => 'The role is changed. It holds from now on.',
});

export const changeSectionAction = formAction(changeSection, {
  read: (form) => ({ ...readMember(form), sectionId: form.get('sectionId') || null }),
  done: () => 'The section is changed.',
});

export const setAccommodationsAction = formAction(setAccommodations, {
  read: (form) => ({ ...readMember(form), accommodations: readAccommodationsForm(form) }),
  done: () => 'Saved. It holds from the next time they open an exercise.',
});

export const removeMemberAction = formAction(removeMember, {
  read: readMember,
  then: (_result, form) => `/courses/${String(form.get('courseId'))}/people/${String(form.get('memberId'))}`,
});

export const putBackMemberAction = formAction(restoreMember, {
  read: readMember,
  then: (_result, form) => `/courses/${String(form.get('courseId'))}/people/${String(form.get('memberId'))}`,
});

export const handOverPasswordLinkAction = formAction(createMemberPasswordLink, {
  read: readMember,
  done: ({ name }) => `Link created for ${name}. It works once, within a day.`,
  show: ({ path }) => ({ passwordLink: publicAddress(path) }),
});

export const allowCourseMakingAction = formAction(allowCourseMaking, {
  read: (form) => ({ ...readMember(form), allowed: form.get('allowed') === 'yes' }),
  then: (_result, form) => `/courses/${String(form.get('courseId'))}/people/${String(form.get('memberId'))}`,
});

/** Course and member of a form on a person's page. */
function readMember(form: FormData) {
  return { courseId: form.get('courseId'), memberId: form.get('memberId') };
}

/** The accommodations in the form; those left as for everyone are omitted. */
function readAccommodationsForm(form: FormData): Record<string, unknown> {
  const moreTime = Number(form.get('moreTime') || 0);
  const workingView = Number(form.get('workingView') || 1);
  return {
    ...(moreTime !== 0 && { moreTime }),
    ...(workingView !== 1 && { workingView }),
    ...(form.get('benchTells') && { benchTells: form.get('benchTells') }),
    ...(form.get('gapsSpoken') === 'yes' && { gapsSpoken: true }),
    ...(form.get('singleKeysOff') === 'yes' && { singleKeysOff: true }),
  };
}

export const previewRosterAction = formAction(previewRoster, {
  read: readRoster,
  done: ({ unclear, counts }) =>
    unclear ??
    (counts.faults > 0
      ? `${counted(counts.faults, 'row')} can’t be imported yet.`
      : 'Look through the rows, then import them.'),
  show: (plan) => ({ plan: JSON.stringify(plan) }),
});

export const importRosterAction = formAction(importRoster, {
  read: (form) => ({ ...readRoster(form), makeSections: form.get('makeSections') === 'yes' }),
  done: ({ counts }) =>
    counts.newPeople + counts.invited === 0
      ? 'Everyone on the list is already in the course; nothing was changed.'
      : `${counted(counts.newPeople, 'person', 'people')} joined the course with a new account; ${counted(counts.invited, 'person with an account is', 'people with an account are')} invited.`,
  show: ({ links, invitations, byMail, expiresAt }) => ({
    links: JSON.stringify(links),
    invitations: JSON.stringify(invitations),
    byMail: byMail ? 'yes' : 'no',
    expires: expiresAt.toISOString().slice(0, 10),
  }),
});

/** The roster in the form: the text, and the chosen meaning of each column. */
function readRoster(form: FormData) {
  return {
    courseId: form.get('courseId'),
    text: String(form.get('text') ?? ''),
    columns: form.getAll('column'),
  };
}
