'use server';
import { addSection } from '@/lib/course/add-section';
import { editCourse } from '@/lib/course/edit-course';
import { removeSection } from '@/lib/course/remove-section';
import { renameSection } from '@/lib/course/rename-section';
import { formAction } from '@/lib/http/form-action';

const here = (form: FormData, part = '') => `/courses/${String(form.get('courseId'))}/settings${part}`;

export const editCourseAction = formAction(editCourse, {
  read: (form) => ({
    courseId: form.get('courseId'),
    version: form.get('version'),
    title: form.get('title'),
    timeZone: form.get('timeZone'),
    retainUntil: form.get('retainUntil') || null,
  }),
  done: () => 'Saved.',
});

export const addSectionAction = formAction(addSection, {
  read: (form) => ({ courseId: form.get('courseId'), name: form.get('newSection') }),
  then: (_result, form) => here(form, '#sections'),
});

export const renameSectionAction = formAction(renameSection, {
  read: (form) => ({
    courseId: form.get('courseId'),
    sectionId: form.get('sectionId'),
    name: form.get(`section-${String(form.get('sectionId'))}`),
  }),
  done: () => 'Renamed.',
});

export const removeSectionAction = formAction(removeSection, {
  read: (form) => ({ courseId: form.get('courseId'), sectionId: form.get('sectionId') }),
  then: (_result, form) => here(form, '#sections'),
});
