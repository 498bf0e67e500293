'use server';
import { formAction } from '@/lib/http/form-action';
import { answerNote } from '@/lib/release/released';

export const answerNoteAction = formAction(answerNote, {
  read: (form) => ({
    noteId: form.get('noteId'),
    afterSeq: Number(form.get('afterSeq')),
    body: form.get(`body-${String(form.get('noteId'))}`),
  }),
  then: (_result, form) => `/proofs/${encodeURIComponent(String(form.get('proofId')))}?answered=1`,
});
