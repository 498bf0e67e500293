'use server';
import { becomeFirstInstructor } from '@/lib/account/become-first-instructor';
import { takeUpFirstLink } from '@/lib/account/take-up-first-link';
import { formAction } from '@/lib/http/form-action';
import { writeSessionCookie } from '@/lib/http/session-cookie';

export const becomeFirstInstructorAction = formAction(becomeFirstInstructor, {
  read: (form) => ({
    token: form.get('token'),
    name: form.get('name'),
    email: form.get('email'),
    password: form.get('password'),
  }),
  secret: ['password'],
  then: async ({ sessionToken }) => {
    await writeSessionCookie(sessionToken);
    return '/courses/new';
  },
});

export const takeUpFirstLinkAction = formAction(takeUpFirstLink, {
  read: (form) => ({ token: form.get('token') }),
  then: () => '/courses/new',
});
