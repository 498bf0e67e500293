'use client';
import { useRouter } from 'next/navigation';
import { useEffect, useState, useTransition } from 'react';

/** Long enough for a slow page; if it has not come by then, it is not coming, and this page is used again. */
const patience = 10_000;

/**
 * Leads to other pages, and says when one is on its way: from then on this page's keys are nobody's, so that a quick hand
 * leaves nothing on the line that it has turned away from.
 */
export function useGoing(): { leaving: boolean; go: (address: string) => void } {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [clicked, setClicked] = useState(false);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout>;
    const click = (event: MouseEvent) => {
      const link = event.target instanceof Element ? event.target.closest('a[href^="/"]:not([target])') : null;
      if (!link || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey || event.button !== 0) return;
      if (link instanceof HTMLAnchorElement && link.pathname === location.pathname && link.search === location.search)
        return;
      setClicked(true);
      timer = setTimeout(() => setClicked(false), patience);
    };
    document.addEventListener('click', click);
    return () => {
      document.removeEventListener('click', click);
      clearTimeout(timer);
    };
  }, []);
  return { leaving: pending || clicked, go: (address) => start(() => router.push(address)) };
}
