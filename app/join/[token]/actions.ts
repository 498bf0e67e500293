'use server';
import { joinCourse } from '@/lib/course/join-course';
import { joinWithNewAccount } from '@/lib/course/join-with-new-account';
import { formAction } from '@/lib/http/form-action';
import { writeSessionCookie } from '@/lib/http/session-cookie';

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
