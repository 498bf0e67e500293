// Fits one net for run.ts.
import { corpus } from './corpus';
import { fitNet, type FitOptions } from './fit-net';

process.on('message', (options: FitOptions) => {
  void work(options);
});

async function work(options: FitOptions): Promise<void> {
  const fitting = (await corpus()).filter(({ role }) => role === 'fitting');
  const net = await fitNet(fitting, options, (text) => process.stderr.write(`seed ${options.seed}: ${text}\n`));
  process.send!(net);
}
