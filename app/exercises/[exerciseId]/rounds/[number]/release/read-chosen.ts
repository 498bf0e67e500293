/** The operation's input from the plan's form: each ticked box holds the proof's token and the digest of what was shown. */
export function readChosen(form: FormData): unknown {
  const to = form.getAll('to').map((value) => {
    const [proofId, seen] = String(value).split(' ');
    return { proofId, seen };
  });
  return { exerciseId: form.get('exerciseId'), roundNumber: Number(form.get('roundNumber')), to };
}
