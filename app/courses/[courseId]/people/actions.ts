'use server';
import { makeJoinLink } from '@/lib/course/make-join-link';
import { revokeJoinLink } from '@/lib/course/revoke-join-link';
import { formAction } from '@/lib/http/form-action';
import { publicAddress } from '@/lib/http/public-address';

export const makeJoinLinkAction = formAction(makeJoinLink, {
  read: (form) => ({
    courseId: form.get('courseId'),
    role: form.get('role'),
    sectionId: form.get('sectionId') || null,
    days: form.get('days'),
  }),
  done: ({ role }) => `The link for the role ${role} is made.`,
  show: ({ path }) => ({ joinLink: publicAddress(path) }),
});

export const revokeJoinLinkAction = formAction(revokeJoinLink, {
  read: (form) => ({ courseId: form.get('courseId'), joinLinkId: form.get('joinLinkId') }),
  then: (_result, form) => `/courses/${String(form.get('courseId'))}/people#invite`,
});
