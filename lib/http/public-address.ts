import { env } from '@/lib/env';

/** A path of ours as people outside type it. */
export const publicAddress = (path: string): string => env().publicOrigin + path;
