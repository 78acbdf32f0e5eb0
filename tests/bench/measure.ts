/** One thing to time. */
export interface BenchCase {
  readonly name: string;
  /** What it may take on the machine that this is measured on, milliseconds; printed beside the figure. */
  readonly targetMilliseconds?: number;
  readonly run: () => unknown;
}

/** Times of one case, milliseconds; `processor` is the mean time that the processor spent, which other work does not lengthen. */
export interface Timing {
  readonly runs: number;
  readonly median: number;
  readonly ninthDecile: number;
  readonly processor: number;
}

/** Runs a case until it is warm, then for about a second, and gives the spread of its times. */
export function measure({ run }: BenchCase): Timing {
  for (const until = performance.now() + 300; performance.now() < until; ) run();
  const times: number[] = [];
  const before = process.cpuUsage();
  for (const until = performance.now() + 1000; performance.now() < until || times.length < 5; ) {
    const start = performance.now();
    run();
    times.push(performance.now() - start);
  }
  const { user, system } = process.cpuUsage(before);
  times.sort((a, b) => a - b);
  const at = (part: number): number => times[Math.min(times.length - 1, Math.floor(part * times.length))] ?? 0;
  return { runs: times.length, median: at(0.5), ninthDecile: at(0.9), processor: (user + system) / 1000 / times.length };
}
