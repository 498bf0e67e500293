'use server';
import { createExercise } from '@/lib/exercise/create-exercise';
import { formAction } from '@/lib/http/form-action';

export const createExerciseAction = formAction(createExercise, {
  read: (form) => ({
    courseId: String(form.get('courseId') ?? ''),
    title: String(form.get('title') ?? ''),
    brief: String(form.get('brief') ?? '').replace(/\r\n?/g, '\n'),
    safetySigns: form.get('safetySigns') === 'yes',
  }),
  then: ({ exerciseId }) => `/exercises/${exerciseId}/plan`,
});
