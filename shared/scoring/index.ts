/** What screens and commands use for comparing a line and finding its faults. */
export { measureLine } from './measure-line';
export { reportLine } from './report-line';
export { compareLine } from './compare-line';
export { responseHints, responsePoint, expectedResponse } from './response';
export type { SetSpecimen } from './response';
export { leastTolerance } from './least-tolerance';
export { beyondHalfRange, usualSuggestion } from './usual-suggestion';
export { chooseFindings } from './choose-findings';
