'use client';
import { signIn } from 'next-auth/react';
import { useState } from 'react';
import { Button } from '@/app/_ui/Button';

/** Leads to the school's own sign-in and back. */
export function SchoolButton({ name, next }: { name: string; next: string }) {
  const [going, setGoing] = useState(false);
  return (
    <Button
      aria-disabled={going || undefined}
      onClick={() => {
        if (going) return;
        setGoing(true);
        void signIn('school', { callbackUrl: next });
      }}
    >
      {going ? 'One moment…' : `Sign in through ${name}`}
    </Button>
  );
}
