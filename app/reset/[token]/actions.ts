'use server';
import { resetPassword } from '@/lib/account/reset-password';
import { formAction } from '@/lib/http/form-action';
import { writeSessionCookie } from '@/lib/http/session-cookie';

export const resetPasswordAction = formAction(resetPassword, {
  read: (form) => ({ token: form.get('token'), newPassword: form.get('newPassword') }),
  secret: ['newPassword'],
  then: async ({ sessionToken }) => {
    await writeSessionCookie(sessionToken);
    return '/courses';
  },
});
