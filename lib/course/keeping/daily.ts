import { systemCaller } from '@/lib/access/actor';
import { logError } from '@/lib/http/log';
import { sendKeepingNotices } from './send-notices';

const aDay = 86_400_000;

/** Looks for notices that are due now and then every day, as long as the process runs. A lease keeps several processes apart. */
export function lookEveryDay(): void {
  const look = () => void sendKeepingNotices(systemCaller('notices before the day until which work is kept'), {}).catch(logError);
  look();
  setInterval(look, aDay).unref();
}
