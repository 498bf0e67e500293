/** What screens and commands use of comparing and explaining. */
export { compareLine } from './compareLine';
export { asShareOfStemGap, betweenLetters, thousandths, typeset } from './words';
