const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** By name, as a list of people is read; figures by their value (Section 2 before Section 10). */
export const byName = (a: { name: string }, b: { name: string }): number => collator.compare(a.name, b.name);
