'use client';
import { useEffect, useState } from 'react';
import { Button } from '@/app/_ui/Button';
import { Notice } from '@/app/_ui/Notice';
import type { ClassMap } from '@/shared/class/map';
import { MapView } from './map-view';
import styles from './map.module.css';

type Props = { /** Where the numbers are. */ address: string };

/** The map of a class: fetches its numbers in one answer and draws them. */
export function Map({ address }: Props) {
  const [state, setState] = useState<{ map: ClassMap } | { failed: string } | null>(null);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    const leaving = new AbortController();
    performance.mark('map-asked');
    fetch(address, { signal: leaving.signal })
      .then(async (answer) => {
        if (!answer.ok)
          throw new Error(
            answer.status === 401
              ? 'You are signed out. Sign in and come back.'
              : `The server answered ${answer.status}.`,
          );
        const map = (await answer.json()) as ClassMap;
        performance.mark('map-came');
        setState({ map });
      })
      .catch((error: Error) => {
        if (!leaving.signal.aborted) setState({ failed: error.message });
      });
    return () => leaving.abort();
  }, [address, tries]);

  if (state === null)
    return (
      <p className={styles.waiting} role="status">
        The map is being fetched…
      </p>
    );
  if ('failed' in state) {
    return (
      <Notice kind="warning">
        The map did not come: {state.failed}{' '}
        <Button
          kind="text"
          onClick={() => {
            setState(null);
            setTries(tries + 1);
          }}
        >
          Try again
        </Button>
      </Notice>
    );
  }
  return <MapView map={state.map} />;
}
