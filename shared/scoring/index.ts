/** What screens and commands use of comparing and explaining. */
export { compareLine } from './compare-line';
export { asShareOfStemGap, betweenLetters, thousandths, typeset } from './words';
