import { type BenchTelling, benchTellings } from '@/shared/schemas/course';
import type { ExerciseSettings } from '@/shared/schemas/exercise';

/** What a bench may show of a spacing. */
export type BenchTells = {
  readonly level: BenchTelling;
  /** Letters that touch, cross or nearly do. */
  readonly contact: boolean;
  /** The gap ruler and how even the line is. */
  readonly evenness: boolean;
  /** Suggestions, and the references and tolerances where they may be seen at all. */
  readonly suggestions: boolean;
};

/**
 * What the bench shows one student: nothing before a proof is sent, unless the exercise allows it; nothing ever where
 * the course hides measured figures; a member's accommodation overrides both. A courtesy of the screen, not a secret.
 */
export function whatTheBenchTells(
  settings: Pick<ExerciseSettings, 'benchTells' | 'benchTellsAfterProof'>,
  accommodations: { readonly benchTells?: BenchTelling | null | undefined },
  proofSent: boolean,
  figuresHidden = false,
): BenchTells {
  const level =
    accommodations.benchTells ??
    (figuresHidden
      ? 'nothing'
      : proofSent
        ? atLeast(settings.benchTells, settings.benchTellsAfterProof)
        : settings.benchTells);
  return {
    level,
    contact: tellsAtLeast(level, 'contact'),
    evenness: tellsAtLeast(level, 'evenness'),
    suggestions: tellsAtLeast(level, 'everything'),
  };
}

/** Whether a bench at `level` shows this much. */
export const tellsAtLeast = (level: BenchTelling, what: BenchTelling): boolean =>
  benchTellings.indexOf(level) >= benchTellings.indexOf(what);

/** Sending a proof never hides what was shown before. */
const atLeast = (before: BenchTelling, after: BenchTelling): BenchTelling =>
  tellsAtLeast(before, after) ? before : after;
