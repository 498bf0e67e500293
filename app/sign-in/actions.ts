'use server';

import { becomeFirstInstructor, acceptFirstLink } from '@/lib/account/first-instructor';
import { requestPasswordLink, resetPassword } from '@/lib/account/password-links';
import { signIn } from '@/lib/account/sign-in';
import { joinCourse, joinWithNewAccount } from '@/lib/course/join';
import { formAction } from '@/lib/http/form-action';
import { safeNext } from '@/lib/http/next-address';
import { writeSessionCookie } from '@/lib/http/session-cookie';

export const signInAction = formAction(signIn, {
  read: (form) => ({ email: form.get('email'), password: form.get('password') }),
  secret: ['password'],
  then: async ({ sessionToken }, form) => {
    await writeSessionCookie(sessionToken);
    return safeNext(form.get('next'));
  },
});

export const requestPasswordLinkAction = formAction(requestPasswordLink, {
  read: (form) => ({ email: form.get('email') }),
  done: () =>
    'If this address has an account, we’ve sent it a link. It works once, for two hours. If you don’t see it, check your spam folder.',
});

export const resetPasswordAction = formAction(resetPassword, {
  read: (form) => ({ token: form.get('token'), newPassword: form.get('newPassword') }),
  secret: ['newPassword'],
  then: async ({ sessionToken }) => {
    await writeSessionCookie(sessionToken);
    return '/courses';
  },
});

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

export const takeUpFirstLinkAction = formAction(acceptFirstLink, {
  read: (form) => ({ token: form.get('token') }),
  then: () => '/courses/new',
});

export const joinCourseAction = formAction(joinCourse, {
  read: (form) => ({ token: form.get('token') }),
  then: ({ courseId }) => `/courses/${courseId}`,
});

export const joinWithNewAccountAction = formAction(joinWithNewAccount, {
  read: (form) => ({
    token: form.get('token'),
    name: form.get('name'),
    email: form.get('email'),
    password: form.get('password'),
  }),
  secret: ['password'],
  then: async ({ courseId, sessionToken }) => {
    await writeSessionCookie(sessionToken);
    return `/courses/${courseId}`;
  },
});
