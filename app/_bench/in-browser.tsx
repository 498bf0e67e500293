'use client';
import { useSyncExternalStore, type ComponentType } from 'react';

/**
 * `Part` where there is a browser; on the server, and while the page comes to life, `Still` in its place. Loaded by a
 * `dynamic` that renders on the server, too, so that the page itself asks for the part's code and it comes together with
 * the framework's and not after it.
 */
export function inBrowser<Props extends object>(Part: ComponentType<Props>, Still: ComponentType): ComponentType<Props> {
  return function InBrowser(props: Props) {
    const here = useSyncExternalStore(never, () => true, () => false);
    return here ? <Part {...props} /> : <Still />;
  };
}

const never = () => () => undefined;
