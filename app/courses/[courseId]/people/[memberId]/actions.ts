'use server';
import { allowCourseMaking } from '@/lib/course/allow-course-making';
import { changeRole } from '@/lib/course/change-role';
import { changeSection } from '@/lib/course/change-section';
import { handOverPasswordLink } from '@/lib/course/hand-over-password-link';
import { putBackMember } from '@/lib/course/put-back-member';
import { removeMember } from '@/lib/course/remove-member';
import { setAccommodations } from '@/lib/course/set-accommodations';
import { formAction } from '@/lib/http/form-action';
import { publicAddress } from '@/lib/http/public-address';
import { readAccommodationsForm, readWhich } from './read-forms';

export const changeRoleAction = formAction(changeRole, {
  read: (form) => ({ ...readWhich(form), role: form.get('role') }),
  done: () => 'The role is changed. It holds from now on.',
});

export const changeSectionAction = formAction(changeSection, {
  read: (form) => ({ ...readWhich(form), sectionId: form.get('sectionId') || null }),
  done: () => 'The section is changed.',
});

export const setAccommodationsAction = formAction(setAccommodations, {
  read: (form) => ({ ...readWhich(form), accommodations: readAccommodationsForm(form) }),
  done: () => 'Saved. It holds from the next time they open an exercise.',
});

export const removeMemberAction = formAction(removeMember, {
  read: readWhich,
  then: (_result, form) => `/courses/${String(form.get('courseId'))}/people/${String(form.get('memberId'))}`,
});

export const putBackMemberAction = formAction(putBackMember, {
  read: readWhich,
  then: (_result, form) => `/courses/${String(form.get('courseId'))}/people/${String(form.get('memberId'))}`,
});

export const handOverPasswordLinkAction = formAction(handOverPasswordLink, {
  read: readWhich,
  done: ({ name }) => `The link for ${name} is made. It works once, for a day.`,
  show: ({ path }) => ({ passwordLink: publicAddress(path) }),
});

export const allowCourseMakingAction = formAction(allowCourseMaking, {
  read: (form) => ({ ...readWhich(form), allowed: form.get('allowed') === 'yes' }),
  then: (_result, form) => `/courses/${String(form.get('courseId'))}/people/${String(form.get('memberId'))}`,
});
