import { pearson } from '@/shared/stats/correlation';
import { CASE_CLASSES, type AgreementFace, type CaseClass } from './load';

/** Agreement of predictions with one face's shipped kerning; r is 0 where the prediction never varies. */
export type Score = { r: number; miss: number; zero: number; byCase: Record<CaseClass, number> };

export function scoreOf(face: AgreementFace, predicted: number[]): Score {
  const byCase = Object.fromEntries(
    CASE_CLASSES.map((caseClass) => {
      const these = face.pairs
        .map((pair, index) => (pair.caseClass === caseClass ? index : -1))
        .filter((index) => index >= 0);
      return [
        caseClass,
        pearson(
          these.map((i) => predicted[i]!),
          these.map((i) => face.kerns[i]!),
        ) ?? 0,
      ];
    }),
  ) as Record<CaseClass, number>;
  const miss = face.kerns.reduce((sum, kern, i) => sum + Math.abs(predicted[i]! - kern), 0) / face.kerns.length;
  return { r: pearson(predicted, face.kerns) ?? 0, miss, zero: face.alwaysZero, byCase };
}
