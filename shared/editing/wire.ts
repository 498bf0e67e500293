import type { SaveRequest } from '@/shared/schemas/draft';
import type { SpacingDocument } from './document';

/** A document as it travels. */
export function toWire(document: SpacingDocument): Pick<SaveRequest, 'spacing' | 'tolerances' | 'reasons'> {
  return {
    spacing: { tracking: document.tracking, offsets: [...document.offsets] },
    ...(document.tolerances && { tolerances: [...document.tolerances] }),
    ...(document.reasons && { reasons: [...document.reasons] }),
  };
}

/** A document as it was sent or stored by the server. */
export function fromWire(sent: Pick<SaveRequest, 'spacing' | 'tolerances' | 'reasons'>): SpacingDocument {
  return {
    tracking: sent.spacing.tracking,
    offsets: sent.spacing.offsets,
    ...(sent.tolerances && { tolerances: sent.tolerances }),
    ...(sent.reasons && { reasons: sent.reasons }),
  };
}
