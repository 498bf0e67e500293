'use client';
import { useEffect, useState } from 'react';
import { send } from './send';

/** Keeps the proof for this marker as long as the page is open and in view; says who has it where somebody else does. */
export function useClaim(token: string, heldBy: string | null, letGo: boolean): { heldBy: string | null } {
  const [refused, setRefused] = useState<string | null>(null);
  useEffect(() => {
    if (letGo) return;
    const claim = async () => {
      if (document.visibilityState !== 'visible') return;
      const answer = await send<{ keptUntil: string }>('PUT', '/api/critique/claims', { proof: token });
      if (answer.ok) setRefused(null);
      else if (!answer.again) setRefused((answer.body as { heldBy?: string } | null)?.heldBy ?? null);
    };
    const first = setTimeout(() => void claim(), 400);
    const again = setInterval(() => void claim(), 4 * 60_000);
    return () => {
      clearTimeout(first);
      clearInterval(again);
    };
  }, [token, letGo]);
  return { heldBy: refused ?? heldBy };
}
