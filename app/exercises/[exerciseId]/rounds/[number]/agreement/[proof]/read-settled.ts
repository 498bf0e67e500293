/** The operation's input from the form: a level by its index, or none to take back what was settled. */
export function readSettled(form: FormData): unknown {
  const level = form.get('level');
  return {
    proof: form.get('proof'),
    criterionVersionId: form.get('criterionVersionId'),
    version: Number(form.get('version')),
    // Nothing chosen stays undefined, so that the form says what is missing.
    level: level === 'none' ? null : level === null ? undefined : Number(level),
    why: String(form.get('why') ?? ''),
  };
}
