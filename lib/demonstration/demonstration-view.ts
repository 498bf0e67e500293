import { readPack } from '@/lib/rows/specimen';
import { formerTeacher } from '@/lib/reference/named-author';
import { spacingsOf } from '@/shared/demonstration/steps';
import { demonstrationStepsSchema } from '@/shared/schemas/demonstration';
import { groundSchema, sizeSchema } from '@/shared/schemas/spacing';

type Row = {
  id: string;
  title: string;
  steps: string;
  createdAt: Date;
  shownAt: Date | null;
  removedAt: Date | null;
  version: number;
  author: { user: { name: string } | null };
  specimenVersion: {
    text: string;
    packSha: string;
    size: number;
    unit: string;
    ground: string;
    pack: { payload: string };
    specimen: { id: string; position: number };
  };
};

/** A demonstration with its line, checked on the way out. */
export function demonstrationView({ specimenVersion: line, author, steps, ...row }: Row) {
  const recorded = demonstrationStepsSchema.parse(JSON.parse(steps));
  const spacings = spacingsOf(recorded);
  return {
    ...row,
    author: author.user?.name ?? formerTeacher,
    specimenId: line.specimen.id,
    position: line.specimen.position,
    text: line.text,
    pack: readPack(line.packSha, line.pack.payload),
    size: sizeSchema.parse({ value: line.size, unit: line.unit }),
    ground: groundSchema.parse(line.ground),
    recorded,
    /** How the line stands at the end. */
    last: spacings[spacings.length - 1]!,
    reasons: recorded.steps.filter(({ reason }) => reason !== '').length,
  };
}
export type DemonstrationView = ReturnType<typeof demonstrationView>;
