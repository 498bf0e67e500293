'use server';

import { addSection, removeSection, renameSection } from '@/lib/course/sections';
import { copyCourse } from '@/lib/course/copy';
import { createCourse, editCourse } from '@/lib/course/courses';
import { endRetention } from '@/lib/course/retention';
import { createExercise } from '@/lib/exercise/exercises';
import { formAction } from '@/lib/http/form-action';
import { counted } from '@/shared/text/number';

export const createCourseAction = formAction(createCourse, {
  read: (form) => ({ title: form.get('title'), timeZone: form.get('timeZone') }),
  then: ({ courseId }) => `/courses/${courseId}`,
});

export const createExerciseAction = formAction(createExercise, {
  read: (form) => ({
    courseId: String(form.get('courseId') ?? ''),
    title: String(form.get('title') ?? ''),
    brief: String(form.get('brief') ?? '').replace(/\r\n?/g, '\n'),
    safetySigns: form.get('safetySigns') === 'yes',
  }),
  then: ({ exerciseId }) => `/exercises/${exerciseId}/plan`,
});

const here = (form: FormData, part = '') => `/courses/${String(form.get('courseId'))}/settings${part}`;

export const editCourseAction = formAction(editCourse, {
  read: (form) => ({
    courseId: form.get('courseId'),
    version: form.get('version'),
    title: form.get('title'),
    timeZone: form.get('timeZone'),
    retainUntil: form.get('retainUntil') || null,
    figuresHidden: form.get('figuresHidden') === 'yes',
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

export const copyCourseAction = formAction(copyCourse, {
  read: (form) => ({
    courseId: form.get('courseId'),
    title: form.get('title'),
    dates: form.get('dates'),
    days: form.get('days'),
  }),
  then: ({ courseId }) => `/courses/${courseId}`,
});

export const endRetentionAction = formAction(endRetention, {
  read: (form) => ({ courseId: form.get('courseId'), title: form.get('title') }),
  done: ({ students }) => `Done: the course no longer names its ${counted(students, 'student')}.`,
});
