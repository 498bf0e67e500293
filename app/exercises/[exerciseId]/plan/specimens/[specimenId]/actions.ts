'use server';
import { previewSpecimenChange } from '@/lib/exercise/preview-specimen-change';
import { formAction } from '@/lib/http/form-action';
import { specimen } from '../../read-forms';

/** Tries the change without making it; what was typed goes on to the page that shows what it does. */
export const lookAtChangeAction = formAction(previewSpecimenChange, {
  read: specimen,
  then: (_result, form) => {
    const typed = new URLSearchParams(
      ['text', 'face', 'size', 'ground', 'remark', 'number'].map((name) => [name, String(form.get(name) ?? '')]),
    );
    return `/exercises/${String(form.get('exerciseId'))}/plan/specimens/${String(form.get('specimenId'))}/change?${typed.toString()}`;
  },
});
