import { logError } from '@/lib/http/log';
import { passwordChangedLetter } from './letters';
import { mailIsSetUp, sendMail } from './send';

/** Tells the owner of an account that its password was changed, where mail is set up. The change stands whatever becomes of the letter. */
export function tellPasswordChanged(person: { emailNorm: string; name: string }, now: Date): void {
  if (!mailIsSetUp()) return;
  const at = `${now.toISOString().slice(0, 16).replace('T', ' ')} UTC`;
  void sendMail(passwordChangedLetter({ to: person.emailNorm, name: person.name, at })).catch(logError);
}
