/**
 * Next calls this once when the server starts, before it answers anybody. The processes that open face files are started
 * before the first line is asked for.
 */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const [{ startFaceProcesses }, { doChoresEveryHour }, { beginServing }] = await Promise.all([
    import('./lib/face/processes/pool'),
    import('./lib/ops/every-hour'),
    import('./lib/ops/begin-serving'),
  ]);
  // Pages made while building serve nobody.
  if (process.env.NEXT_PHASE !== 'phase-production-build') beginServing();
  // Not waited for: pages that need no face should not wait for it. What goes wrong shows itself at the first line.
  void startFaceProcesses().catch(() => undefined);
  doChoresEveryHour();
}
