import type { Caller } from '@/lib/access/caller';
import { saveDemonstration, setDemonstrationShown } from '@/lib/work/demonstrations';
import { getReferenceBench } from '@/lib/reference/bench';
import { newId } from '@/lib/data/ids';
import { stepBetween } from '@/shared/demonstration/steps';
import type { DemonstrationStep } from '@/shared/schemas/demonstration';
import type { Spacing } from '@/shared/schemas/spacing';
import { remarks } from './exercise-words';

type Teachers = { instructor: Caller; assistant: Caller };

/**
 * How two lines were set, step by step, by invented people: the instructor's is shown to the course, the assistant's
 * not yet.
 */
export async function seedDemonstrations(
  { instructor, assistant }: Teachers,
  specimenIds: readonly string[],
  now: Date,
): Promise<void> {
  const shown = await record(instructor, specimenIds[0]!, 'From the widest hole to the quiet gaps', now);
  await setDemonstrationShown(instructor, { demonstrationId: shown, version: 0, shown: true }, { now });
  await record(assistant, specimenIds[2]!, 'Capitals on a dark ground', now);
}

/** From the line as the face sets it to the author's own reference: the furthest gaps first, the tracking last. */
async function record(author: Caller, specimenId: string, title: string, now: Date): Promise<string> {
  const { own, specimen } = await getReferenceBench(author, { specimenId, slot: 1 }, { now });
  const target = own!.spacing;
  const order = target.offsets
    .map((_, pair) => pair)
    .filter((pair) => target.offsets[pair] !== 0)
    .sort((one, other) => Math.abs(target.offsets[other]!) - Math.abs(target.offsets[one]!));
  const start: Spacing = { tracking: 0, offsets: target.offsets.map(() => 0) };
  const steps: DemonstrationStep[] = [];
  let at = start;
  const go = (next: Spacing, run: [number, number] | null, reason: string) => {
    steps.push(stepBetween(at, next, run, reason));
    at = next;
  };
  for (const [place, pair] of order.entries()) {
    go(
      { ...at, offsets: at.offsets.map((offset, index) => (index === pair ? target.offsets[pair]! : offset)) },
      [pair, pair],
      own!.reasons[pair] ?? remarks[place] ?? '',
    );
  }
  go({ ...at, tracking: target.tracking }, null, remarks.last);
  const demonstrationId = newId();
  await saveDemonstration(
    author,
    { demonstrationId, specimenVersionId: specimen.versionId, title, recorded: { start, steps } },
    { now },
  );
  return demonstrationId;
}
