import { practiceKindSchema, practicePayloadSchema, type PracticeResult } from '@/shared/schemas/practice';

type Row = { requestKey: string; kind: string; size: number; threshold: number; payload: string; at: Date };

/** A kept result as the browser knows it, checked on the way out. */
export function practiceResultView({ requestKey, kind, size, threshold, payload, at }: Row): PracticeResult {
  return {
    requestKey,
    at: at.toISOString(),
    kind: practiceKindSchema.parse(kind === '' ? 'any' : kind),
    size,
    fault: threshold,
    ...practicePayloadSchema.parse(JSON.parse(payload)),
  };
}
