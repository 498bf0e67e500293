/**
 * A name as lists order it and search finds it: small letters, no accents, one space between words. “Łucja Ångström” becomes
 * “łucja angstrom”: only what Unicode takes apart (NFKD) loses its mark. Kept in Member.listName, since the two databases
 * neither order nor search letters alike, and since a list of thousands is read a page at a time in this order.
 */
export const listNameOf = (name: string): string =>
  name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replace(/\s+/gu, ' ').trim();
