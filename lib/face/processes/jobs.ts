import type { Pack } from '@/shared/schemas/pack';
import { composePack } from '../compose-pack';
import { composePairs, type PairTable } from '../compose-pairs';
import type { FaceFacts } from '../face-facts';
import type { AxisValues, Face } from '../read-face';
import type { SecondReading } from '../second-reader';

/** What a face says of itself, and how far a second reader agrees. */
export type InspectedFace = FaceFacts & { secondReading: SecondReading };

/** A face that was taken in: opened, and compared with what a second reader makes of it. */
export type CheckedFace = Face & { secondReading: SecondReading };

/** The source of the bytes, as it is sent to a face process. */
export type JobSource = { path?: string; bytes?: Uint8Array; index?: number; axes?: AxisValues };

export type Job =
  | { task: 'facts'; source: JobSource }
  | { task: 'pack'; source: JobSource; text: string }
  | { task: 'pairs'; source: JobSource; pairs: string[] };

export type JobResult<J extends Job> = J extends { task: 'pack' }
  ? Pack
  : J extends { task: 'pairs' }
    ? PairTable
    : InspectedFace;

/** What a face process sends back. `retire`: it has grown and wants to be replaced. */
export type JobReply = { id: number; retire: boolean } & ({ value: unknown } | { code: string; message: string });

export function doJob(face: CheckedFace, job: Job): Pack | PairTable | InspectedFace {
  if (job.task === 'pack') return composePack(face, job.text);
  if (job.task === 'pairs') return composePairs(face, job.pairs);
  return { ...face.facts, secondReading: face.secondReading };
}
