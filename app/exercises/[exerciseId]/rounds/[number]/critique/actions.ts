'use server';
import { formAction } from '@/lib/http/form-action';
import { beginMarking } from '@/lib/critique/begin-marking';

export const beginMarkingAction = formAction(beginMarking, {
  read: (form) => ({ exerciseId: form.get('exerciseId'), roundNumber: form.get('roundNumber'), version: form.get('version') }),
  then: (_result, form) => `/exercises/${String(form.get('exerciseId'))}/rounds/${String(form.get('roundNumber'))}/critique`,
});
