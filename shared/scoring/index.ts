/** What screens and commands use of comparing a line and finding what can be said of it. */
export { measureLine } from './measure-line';
export { reportLine } from './report-line';
export { compareLine } from './compare-line';
export { responseHints, responsePoint, expectedResponse } from './response';
export type { SetSpecimen } from './response';
export { leastTolerance } from './least-tolerance';
export { beyondHalfRange, usualSuggestion } from './usual-suggestion';
export { chooseFindings } from './choose-findings';
