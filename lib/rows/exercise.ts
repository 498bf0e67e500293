import { createHash } from 'node:crypto';
import * as z from 'zod/mini';
import { criterionBasisSchema, levelsSchema } from '@/shared/schemas/criterion';
import {
  type ExerciseSettings,
  exerciseSettingsSchema,
  exerciseStateSchema,
  type LateRule,
  lateRuleSchema,
  roundStateSchema,
} from '@/shared/schemas/exercise';
import { type SecondMarking, secondMarkingSchema } from '@/shared/schemas/mark';

/** Rows of the database as the rest of the house knows them; each is checked on the way out. */
export const settingsOf = (row: { settings: string }): ExerciseSettings =>
  exerciseSettingsSchema.parse(JSON.parse(row.settings));

export const lateRuleOf = (row: { lateRule: string }): LateRule => lateRuleSchema.parse(JSON.parse(row.lateRule));

type ExerciseRow = {
  id: string;
  courseId: string;
  title: string;
  brief: string;
  state: string;
  settings: string;
  version: number;
  createdAt: Date;
  publishedAt: Date | null;
  closedAt: Date | null;
  removedAt: Date | null;
};

export const exerciseView = (row: ExerciseRow) => ({
  id: row.id,
  courseId: row.courseId,
  title: row.title,
  brief: row.brief,
  state: exerciseStateSchema.parse(row.state),
  settings: settingsOf(row),
  version: row.version,
  createdAt: row.createdAt,
  publishedAt: row.publishedAt,
  closedAt: row.closedAt,
  removedAt: row.removedAt,
});
export type ExerciseView = ReturnType<typeof exerciseView>;

type RoundRow = {
  id: string;
  number: number;
  title: string;
  opensLocal: string | null;
  opensAt: Date | null;
  dueLocal: string | null;
  dueAt: Date | null;
  lateRule: string;
  secondMarker: string;
  state: string;
  version: number;
  proofs?: number;
  sections: readonly SectionRow[];
};

type SectionRow = {
  sectionId: string;
  opensLocal: string | null;
  opensAt: Date | null;
  dueLocal: string | null;
  dueAt: Date | null;
  markingStartedAt: Date | null;
  version: number;
  section: { name: string };
};

const sectionView = ({ section, ...row }: SectionRow) => ({
  sectionId: row.sectionId,
  name: section.name,
  opensLocal: row.opensLocal,
  opensAt: row.opensAt,
  dueLocal: row.dueLocal,
  dueAt: row.dueAt,
  markingStartedAt: row.markingStartedAt,
  version: row.version,
});

export const roundView = (row: RoundRow) => ({
  id: row.id,
  number: row.number,
  title: row.title,
  opensLocal: row.opensLocal,
  opensAt: row.opensAt,
  dueLocal: row.dueLocal,
  dueAt: row.dueAt,
  lateRule: lateRuleOf(row),
  secondMarking: secondMarkingOf(row),
  state: roundStateSchema.parse(row.state),
  version: row.version,
  proofs: row.proofs ?? 0,
  /** Sections with something of their own in the round. */
  sections: row.sections.map(sectionView),
});
export type RoundView = ReturnType<typeof roundView>;

type CriterionRow = {
  id: string;
  retiredAt: Date | null;
  versions: {
    id: string;
    number: number;
    title: string;
    description: string;
    basis: string;
    weight: number;
    levels: string;
  }[];
};

/** A criterion by its newest version. */
export function criterionView(row: CriterionRow) {
  const version = row.versions[0]!;
  return {
    id: row.id,
    versionId: version.id,
    number: version.number,
    title: version.title,
    description: version.description,
    basis: criterionBasisSchema.parse(version.basis),
    weight: version.weight,
    levels: levelsSchema.parse(JSON.parse(version.levels)),
    retired: row.retiredAt !== null,
  };
}
export type CriterionView = ReturnType<typeof criterionView>;

/** What a round says about second marking; a round that says nothing wants none. */
export const secondMarkingOf = (round: { secondMarker: string }): SecondMarking =>
  z.parse(secondMarkingSchema, JSON.parse(round.secondMarker));

/**
 * Whether a proof gets a second marker. A share is decided by a hash of the proof's id, which the server made on
 * arrival: it can't be influenced, asking twice gives the same answer, and a larger share keeps every proof of a
 * smaller one.
 */
export function isSampled(proofId: string, { which, percent }: SecondMarking): boolean {
  if (which === 'none') return false;
  return which === 'all' || placeInSample(proofId) < percent / 100;
}

/** From 0 to just under 1, the same for a proof for ever: the first 32 bits of a SHA-256. */
const placeInSample = (proofId: string): number =>
  createHash('sha256').update(`second marker of ${proofId}`).digest().readUInt32BE(0) / 2 ** 32;
