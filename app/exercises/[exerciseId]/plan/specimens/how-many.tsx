'use client';
import { useEffect, useRef, useState } from 'react';
import { parseSizes } from '@/shared/exercise/sizes';
import { counted } from '@/shared/text/number';

/** How many lines the form around it would make now; updated as it is filled in. */
export function HowMany({ most }: { most: number }) {
  const place = useRef<HTMLParagraphElement>(null);
  const [message, setMessage] = useState<string | null>(null);
  useEffect(() => {
    const form = place.current?.closest('form');
    if (!form) return;
    const count = () => setMessage(words(new FormData(form), most));
    count();
    form.addEventListener('input', count);
    return () => form.removeEventListener('input', count);
  }, [most]);
  return (
    <p ref={place} className="plain" role="status">
      {message ?? `At most ${most} at once.`}
    </p>
  );
}

function words(form: FormData, most: number): string {
  const lines = String(form.get('lines') ?? '')
    .split('\n')
    .filter((line) => line.trim() !== '').length;
  const [faces, grounds, sizes] = [
    form.getAll('faces').length,
    form.getAll('grounds').length,
    sizesIn(String(form.get('sizes') ?? '')),
  ];
  const total = lines * faces * sizes * grounds;
  if (total === 0)
    return `Nothing to add yet: ${counted(lines, 'text')}, ${counted(faces, 'face')}, ${counted(sizes, 'size')}, ${counted(grounds, 'ground')}.`;
  const sum = `${counted(lines, 'text')} × ${counted(faces, 'face')} × ${counted(sizes, 'size')} × ${counted(grounds, 'ground')} = ${counted(total, 'line')}`;
  return total > most ? `${sum}. ${most} are the most at once.` : `${sum}.`;
}

function sizesIn(text: string): number {
  try {
    return parseSizes(text).length;
  } catch {
    return 0;
  }
}
