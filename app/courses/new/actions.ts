'use server';
import { createCourse } from '@/lib/course/create-course';
import { formAction } from '@/lib/http/form-action';

export const createCourseAction = formAction(createCourse, {
  read: (form) => ({ title: form.get('title'), timeZone: form.get('timeZone') }),
  then: ({ courseId }) => `/courses/${courseId}`,
});
