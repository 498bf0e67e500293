/** Next calls this once when the server starts: the processes that open face files are started before the first line is asked for. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const [{ warmWorkshop }, { doChoresEveryHour }] = await Promise.all([
    import('./lib/face/workshop/pool'),
    import('./lib/ops/every-hour'),
  ]);
  // Not waited for: pages that need no face should not wait for it. What goes wrong shows itself at the first line.
  void warmWorkshop().catch(() => undefined);
  doChoresEveryHour();
}
