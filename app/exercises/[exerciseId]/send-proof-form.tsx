'use client';

import { useEffect, useState } from 'react';
import { TextArea } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Notice } from '@/app/_ui/Page';
import { type DeviceStore, openJournal } from '@/shared/editing/journal';
import type { Spacing } from '@/shared/schemas/spacing';
import { sendProofAction } from './actions';

type SentDraft = { versionId: string; draftId: string | null; version: number; spacing: Spacing };
type Props = { exerciseId: string; requestKey: string; personKey: string; drafts: SentDraft[] };

/** The form that sends a proof. It warns when this device still has changes that the server doesn't. */
export function SendProofForm({ exerciseId, requestKey, personKey, drafts }: Props) {
  const [unsent, setUnsent] = useState(0);
  const [zoom, setZoom] = useState(1);
  useEffect(() => {
    const look = () => {
      setUnsent(unsentOnThisDevice(personKey, drafts));
      setZoom(browserZoom());
    };
    look();
    window.addEventListener('focus', look);
    window.addEventListener('resize', look);
    return () => {
      window.removeEventListener('focus', look);
      window.removeEventListener('resize', look);
    };
  }, [personKey, drafts]);
  return (
    <Form action={sendProofAction} label="Send a proof">
      <input type="hidden" name="exerciseId" value={exerciseId} />
      <input type="hidden" name="requestKey" value={requestKey} />
      <input type="hidden" name="zoom" value={zoom} />
      <input
        type="hidden"
        name="drafts"
        value={JSON.stringify(Object.fromEntries(drafts.map(({ versionId, version }) => [versionId, version])))}
      />
      <TextArea
        name="reasoning"
        label="Why is it set as it is?"
        hint="One sentence: what you looked for, or what you are unsure of."
        rows={2}
        maxLength={600}
      />
      {unsent > 0 && (
        <Notice
          kind="warning"
          title={
            unsent === 1
              ? 'One line has changes that are only on this device'
              : `${unsent} lines have changes that are only on this device`
          }
        >
          Open {unsent === 1 ? 'it' : 'them'} on the bench while you are online until it says that all is saved; then
          send.
        </Notice>
      )}
      <SubmitButton pending="Sending…" disabled={unsent > 0}>
        Send the proof
      </SubmitButton>
    </Form>
  );
}

/** An estimate: outer over inner width where both are known, which is what page zoom changes in desktop browsers. */
function browserZoom(): number {
  const ratio = window.outerWidth / window.innerWidth;
  return Number.isFinite(ratio) && ratio >= 0.25 && ratio <= 5 ? Math.round(ratio * 100) / 100 : 1;
}

/** How many of these drafts have changes in this device's journal that the server does not have. */
function unsentOnThisDevice(personKey: string, drafts: readonly SentDraft[]): number {
  return drafts.filter(({ draftId, version, spacing }) => {
    if (draftId === null) return false;
    const scope = { personKey, draftId, pairCount: spacing.offsets.length };
    const { sync } = openJournal(readOnly, scope, {
      version,
      document: { tracking: spacing.tracking, offsets: spacing.offsets },
    });
    return sync.unsent !== null || sync.inFlight !== null || sync.conflict !== null;
  }).length;
}

/** The journal, read without changing it; a browser without storage has nothing unsent. */
const readOnly: DeviceStore = {
  get: (key) => attempt(() => window.localStorage.getItem(key)),
  set: () => {},
  remove: () => {},
  keys: () => attempt(() => Object.keys(window.localStorage)) ?? [],
};

function attempt<Value>(look: () => Value): Value | null {
  try {
    return look();
  } catch {
    return null;
  }
}
