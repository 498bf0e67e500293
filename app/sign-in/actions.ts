'use server';
import { requestPasswordLink } from '@/lib/account/request-password-link';
import { signIn } from '@/lib/account/sign-in';
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
    'If there is an account with this address, a letter with a link is on its way to it. It works once and for two hours; look among unwanted mail too.',
});
