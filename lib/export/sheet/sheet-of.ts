import type { ScopedData } from '@/lib/data';
import { AppError, notFound } from '@/lib/access/errors';
import { drawLines, type StoredRelease } from '@/lib/release/released';
import { dateTimeWords } from '@/shared/text/when-words';
import type { Sheet } from './sheet';

type Given = Pick<StoredRelease, 'snapshot' | 'answers'> & {
  who: string;
  /** Where names are hidden, so are times: they would identify the student. */
  hidden: boolean;
  release: Pick<StoredRelease, 'number' | 'releasedAt'> | null;
};

/** The content of a proof's sheet, for those who may see the proof. */
export async function sheetOf(
  data: ScopedData,
  proofId: string,
  { who, hidden, release, snapshot, answers }: Given,
): Promise<Sheet> {
  const proof = await data.proofs.byId(proofId);
  if (!proof) throw notFound();
  const { exercise } = proof.round;
  const zone = exercise.course.timeZone;
  const packOf = new Map(
    proof.items.map(({ specimenVersionId, specimenVersion }) => [specimenVersionId, specimenVersion.packSha]),
  );
  const lines = await drawLines(data, proofId);
  const licences = new Map<string, string>();
  for (const sha of new Set(packOf.values())) licences.set(sha, await data.exports.licenceOf(sha));
  return {
    course: exercise.course.title,
    exercise: exercise.title,
    round: { number: proof.round.number, title: proof.round.title },
    who,
    proof: proof.number,
    received: hidden ? null : dateTimeWords(proof.receivedAt, zone, true),
    state:
      release === null
        ? 'Not released: what would go out now'
        : `${release.number === 1 ? '' : `Correction ${release.number - 1}, `}${dateTimeWords(release.releasedAt, zone, true)}`,
    preview: release === null,
    reasoning: proof.reasoning,
    snapshot,
    answers,
    lines: lines.map((line) => ({ ...line, licence: licences.get(packOf.get(line.specimenVersionId) ?? '') ?? '' })),
  };
}

/** Outlines belong to the face: they are exported only once a person has confirmed that its licence allows it. */
export function askForLicence(read: boolean, licences: readonly string[]): void {
  if (read) return;
  const listed = [...new Set(licences)].join('; ');
  throw new AppError(
    'INVALID',
    `The outlines of the letters belong to their faces. ${listed ? `The licences: ${listed}. ` : ''}Tick that you have read them and that they allow this, then take the file again.`,
  );
}
