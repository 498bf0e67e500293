/** The roster as the form has it: the text, and what each column was chosen to be. */
export const givenIn = (form: FormData) => ({
  courseId: form.get('courseId'),
  text: String(form.get('text') ?? ''),
  columns: form.getAll('column'),
});
