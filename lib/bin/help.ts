/** Answers `--help` of a command and ends it, before anything else is done. */
export function answerHelp(usage: string): void {
  if (!process.argv.slice(2).includes('--help')) return;
  process.stdout.write(`${usage.trim()}\nSettings stand in the environment, or in the file .env: see the README.\n`);
  process.exit(0);
}
