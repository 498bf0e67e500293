/** Course and member of a form on a person's page. */
export const readWhich = (form: FormData) => ({ courseId: form.get('courseId'), memberId: form.get('memberId') });

/** The accommodations as the form has them; what is left as for everyone is left out. */
export function readAccommodationsForm(form: FormData): Record<string, unknown> {
  const moreTime = Number(form.get('moreTime') || 0);
  const workingView = Number(form.get('workingView') || 1);
  return {
    ...(moreTime !== 0 && { moreTime }),
    ...(workingView !== 1 && { workingView }),
    ...(form.get('benchTells') && { benchTells: form.get('benchTells') }),
    ...(form.get('gapsSpoken') === 'yes' && { gapsSpoken: true }),
    ...(form.get('singleKeysOff') === 'yes' && { singleKeysOff: true }),
  };
}
