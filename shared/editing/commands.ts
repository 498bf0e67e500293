import type { Run, Spacing } from '@/shared/schemas/spacing';
import type { PerMille } from '@/shared/units';
import { REASON_LIMIT } from '@/shared/schemas/draft';
import { OFFSET_LIMIT, type SpacingDocument } from './document';

/** Everything that can be done to a spacing. The ends of a run may be in either order. */
export type Command =
  | { readonly kind: 'set offset'; readonly run: Run; readonly offset: PerMille }
  | { readonly kind: 'nudge'; readonly run: Run; readonly by: PerMille }
  | { readonly kind: 'set tracking'; readonly tracking: PerMille }
  | { readonly kind: 'nudge tracking'; readonly by: PerMille }
  | { readonly kind: 'shift letter'; readonly letter: number; readonly by: PerMille }
  /** Back to `to`, what the line began from; without it to the face's own spacing. */
  | { readonly kind: 'reset'; readonly run: Run; readonly to?: Spacing | undefined }
  | { readonly kind: 'reset line'; readonly to?: Spacing | undefined }
  | { readonly kind: 'take spacing'; readonly tracking: PerMille; readonly offsets: readonly PerMille[] }
  | { readonly kind: 'set tolerance'; readonly run: Run; readonly tolerance: PerMille | null }
  | { readonly kind: 'set reason'; readonly pair: number; readonly reason: string };

/**
 * The document after a command. Amounts are rounded to whole thousandths and stop at the limit;
 * a pair that is not in the line, or an amount that is not a number, throws.
 */
export function applyCommand(document: SpacingDocument, command: Command): SpacingDocument {
  switch (command.kind) {
    case 'set offset':
      return withOffsets(document, command.run, () => command.offset);
    case 'nudge':
      return withOffsets(document, command.run, (offset) => offset + command.by);
    case 'reset':
      return withOffsets(document, command.run, (_offset, pair) => command.to?.offsets[pair] ?? 0);
    case 'reset line':
      return {
        ...document,
        tracking: command.to?.tracking ?? 0,
        offsets: document.offsets.map((_offset, pair) => command.to?.offsets[pair] ?? 0),
      };
    case 'set tracking':
      return { ...document, tracking: bounded(command.tracking) };
    case 'nudge tracking':
      return { ...document, tracking: bounded(document.tracking + command.by) };
    case 'shift letter':
      return shiftLetter(document, command.letter, bounded(command.by));
    case 'take spacing':
      return takeSpacing(document, command.tracking, command.offsets);
    case 'set tolerance':
      return withTolerance(document, command.run, command.tolerance);
    case 'set reason':
      return withReason(document, command.pair, command.reason);
  }
}

/** One letter moves between its neighbours and nothing else does: what one gap gains, the other loses. */
function shiftLetter(document: SpacingDocument, letter: number, by: PerMille): SpacingDocument {
  const count = document.offsets.length;
  if (!Number.isInteger(letter) || letter < 0 || letter > count)
    throw new RangeError(`There is no letter ${letter} in a line of ${count + 1}.`);
  const before = document.offsets[letter - 1];
  const after = document.offsets[letter];
  // The first and the last letter have one gap only.
  const most = Math.min(
    before === undefined ? Infinity : room(before, by),
    after === undefined ? Infinity : room(after, -by),
  );
  const step = Math.sign(by) * Math.min(Math.abs(by), most);
  return {
    ...document,
    offsets: document.offsets.map((offset, pair) =>
      pair === letter - 1 ? offset + step : pair === letter ? offset - step : offset,
    ),
  };
}

/** How far an offset may still go in the direction of `by`. */
function room(offset: PerMille, by: PerMille): PerMille {
  return by > 0 ? OFFSET_LIMIT - offset : OFFSET_LIMIT + offset;
}

function takeSpacing(document: SpacingDocument, tracking: PerMille, offsets: readonly PerMille[]): SpacingDocument {
  if (offsets.length !== document.offsets.length) {
    throw new RangeError(
      `This line has ${document.offsets.length} pairs; the spacing to be taken over has ${offsets.length}.`,
    );
  }
  return { ...document, tracking: bounded(tracking), offsets: offsets.map(bounded) };
}

function withOffsets(
  document: SpacingDocument,
  run: Run,
  change: (offset: PerMille, pair: number) => PerMille,
): SpacingDocument {
  const { first, last } = ordered(run, document.offsets.length);
  return {
    ...document,
    offsets: document.offsets.map((offset, pair) =>
      pair >= first && pair <= last ? bounded(change(offset, pair)) : offset,
    ),
  };
}

function withTolerance(document: SpacingDocument, run: Run, tolerance: PerMille | null): SpacingDocument {
  const { first, last } = ordered(run, document.offsets.length);
  const kept = document.tolerances ?? document.offsets.map(() => null);
  const next = tolerance === null ? null : Math.max(0, bounded(tolerance));
  return { ...document, tolerances: kept.map((value, pair) => (pair >= first && pair <= last ? next : value)) };
}

function withReason(document: SpacingDocument, pair: number, reason: string): SpacingDocument {
  ordered({ first: pair, last: pair }, document.offsets.length);
  if (reason.length > REASON_LIMIT)
    throw new RangeError(`The reason is ${reason.length} characters long; ${REASON_LIMIT} is the most.`);
  const kept = document.reasons ?? document.offsets.map(() => '');
  return { ...document, reasons: kept.map((value, index) => (index === pair ? reason : value)) };
}

function ordered(run: Run, count: number): Run {
  const first = Math.min(run.first, run.last);
  const last = Math.max(run.first, run.last);
  if (!Number.isInteger(first) || !Number.isInteger(last) || first < 0 || last >= count) {
    throw new RangeError(`There is no run from pair ${run.first} to ${run.last} in a line of ${count} pairs.`);
  }
  return { first, last };
}

function bounded(value: PerMille): PerMille {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is not a number of thousandths.`);
  // Adding 0 turns a negative zero into a plain one.
  return Math.max(-OFFSET_LIMIT, Math.min(OFFSET_LIMIT, Math.floor(value + 0.5))) + 0;
}
