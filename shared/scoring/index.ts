/** What screens and commands use of comparing and explaining. */
export { compareLine } from './compare-line';
export { responseHints, type ResponseHint, type SetSpecimen } from './response';
export { responsePoint, type ResponsePoint } from './response-point';
export { expectedResponse } from './size-response';
export { asShareOfStemGap, betweenLetters, shareWords, thousandths, typeset } from './words';
export { groundLeft } from './findings/contact';
