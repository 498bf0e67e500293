'use server';
import { endKeeping } from '@/lib/course/keeping/end-keeping';
import { formAction } from '@/lib/http/form-action';
import { counted } from '@/shared/text/number';

export const endKeepingAction = formAction(endKeeping, {
  read: (form) => ({ courseId: form.get('courseId'), title: form.get('title') }),
  done: ({ students }) => `Done: the course no longer names its ${counted(students, 'student')}.`,
});
