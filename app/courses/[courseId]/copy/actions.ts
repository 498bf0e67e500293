'use server';
import { copyCourse } from '@/lib/course/copy/copy-course';
import { formAction } from '@/lib/http/form-action';

export const copyCourseAction = formAction(copyCourse, {
  read: (form) => ({
    courseId: form.get('courseId'),
    title: form.get('title'),
    dates: form.get('dates'),
    days: form.get('days'),
  }),
  then: ({ courseId }) => `/courses/${courseId}`,
});
