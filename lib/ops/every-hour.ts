import { systemCaller } from '@/lib/access/caller';
import { sendRetentionNotices } from '@/lib/course/retention';
import { sendWelcomes } from '@/lib/course/welcomes';
import { logError } from '@/lib/log';
import { closeForgottenWalls } from '@/lib/wall/walls';

const anHour = 3_600_000;

/**
 * What the server does by itself: once when it starts and then every hour, as long as the process runs. Leases keep
 * several processes apart where it matters.
 */
export function doChoresEveryHour(): void {
  const all = () => {
    void sendRetentionNotices(systemCaller('notices before the day until which work is kept'), {}).catch(logError);
    void sendWelcomes(systemCaller('letters to new people'), {}).catch(logError);
    void closeForgottenWalls(systemCaller('walls that were left open'), {}).catch(logError);
  };
  all();
  setInterval(all, anHour).unref();
}
