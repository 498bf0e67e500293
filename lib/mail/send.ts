import { createTransport, type Transporter } from 'nodemailer';
import { env } from '@/lib/env';

export type Letter = { to: string; subject: string; text: string };

/** Whether this installation can send mail at all. */
export const mailIsSetUp = (): boolean => env().mail !== null;

let transport: Transporter | undefined;

/**
 * Sends one letter, as plain text. @throws Error when mail is not set up, or the mail server refuses it or is silent
 * for 10 s.
 */
export async function sendMail({ to, subject, text }: Letter): Promise<void> {
  const { mail } = env();
  if (mail === null) throw new Error('Mail is not set up: set SMTP_URL and MAIL_FROM.');
  transport ??= createTransport({
    url: mail.smtpUrl,
    connectionTimeout: 10_000,
    greetingTimeout: 10_000,
    socketTimeout: 10_000,
  });
  await transport.sendMail({
    from: mail.from,
    to: { name: '', address: to },
    subject,
    text,
    // Keeps out-of-office replies from answering (RFC 3834).
    headers: { 'Auto-Submitted': 'auto-generated' },
    disableFileAccess: true,
    disableUrlAccess: true,
  });
}
