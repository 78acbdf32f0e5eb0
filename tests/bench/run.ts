/** Prints how long the module's work takes. Every `*.bench.ts` beside this file exports its cases as `cases`. */
import { globSync } from 'node:fs';
import { basename } from 'node:path';
import { pathToFileURL } from 'node:url';
import { measure } from './measure.ts';
import type { BenchCase } from './measure.ts';

const wanted = process.argv[2] ?? '';
const time = (milliseconds: number): string => (milliseconds < 1 ? `${(milliseconds * 1000).toFixed(0)} µs` : `${milliseconds.toFixed(1)} ms`);

for (const file of globSync(`${import.meta.dirname}/*.bench.ts`).sort()) {
  const name = basename(file, '.bench.ts');
  if (!name.includes(wanted)) continue;
  const { cases } = (await import(pathToFileURL(file).href)) as { readonly cases: readonly BenchCase[] };
  console.log(`\n${name}`);
  for (const entry of cases) {
    const { runs, median, ninthDecile, processor } = measure(entry);
    const target = entry.targetMilliseconds === undefined ? '' : `   target ${time(entry.targetMilliseconds)}`;
    console.log(`  ${entry.name.padEnd(58)} median ${time(median).padStart(8)}   nine in ten ${time(ninthDecile).padStart(8)}   processor ${time(processor).padStart(8)}   ${runs} runs${target}`);
  }
}
