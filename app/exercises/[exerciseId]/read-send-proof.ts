/** The fields of the form that sends a proof; what is wrong with them is the operation's to say. */
export const readSendProof = (form: FormData): unknown => ({
  exerciseId: form.get('exerciseId'),
  requestKey: form.get('requestKey'),
  reasoning: form.get('reasoning') ?? '',
  zoom: Number(form.get('zoom') ?? 1),
  drafts: parsed(form.get('drafts')),
});

function parsed(value: FormDataEntryValue | null): unknown {
  if (typeof value !== 'string') return undefined;
  try {
    return JSON.parse(value);
  } catch {
    return value;
  }
}
