'use server';
import { changeName, changePassword } from '@/lib/account/account';
import { endSession, signOut, signOutEverywhere } from '@/lib/account/sessions';
import { eraseAccount } from '@/lib/account/erase';
import { makeCalendarFeed, revokeCalendarFeed } from '@/lib/account/calendar';
import { formAction } from '@/lib/http/form-action';
import { publicAddress } from '@/lib/http/public-address';
import { clearSessionCookie, writeSessionCookie } from '@/lib/http/session-cookie';

export const changeNameAction = formAction(changeName, {
  read: (form) => ({ name: form.get('name') }),
  done: ({ name }) => `You now appear on class lists as ${name}.`,
});

export const changePasswordAction = formAction(changePassword, {
  read: (form) => ({ currentPassword: form.get('currentPassword') ?? '', newPassword: form.get('newPassword') }),
  secret: ['currentPassword', 'newPassword'],
  then: async ({ sessionToken }) => {
    await writeSessionCookie(sessionToken);
    return '/account?changed=password';
  },
});

export const signOutAction = formAction(signOut, { read: () => ({}), then: leave });

export const signOutEverywhereAction = formAction(signOutEverywhere, { read: () => ({}), then: leave });

export const endSessionAction = formAction(endSession, {
  read: (form) => ({ sessionId: form.get('sessionId') }),
  then: () => '/account#sessions',
});

export const makeCalendarFeedAction = formAction(makeCalendarFeed, {
  read: () => ({}),
  done: () => 'Here is your calendar’s address.',
  show: ({ path }) => ({ calendar: publicAddress(path) }),
});

export const revokeCalendarFeedAction = formAction(revokeCalendarFeed, {
  read: () => ({}),
  done: () => 'Revoked. Calendars that use this address will no longer be updated.',
});

export const eraseAccountAction = formAction(eraseAccount, {
  read: (form) => ({ email: form.get('email'), password: form.get('password') ?? '' }),
  secret: ['password'],
  then: leave,
});

async function leave(): Promise<string> {
  await clearSessionCookie();
  return '/';
}
