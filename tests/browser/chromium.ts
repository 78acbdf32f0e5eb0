import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium, type Browser } from 'playwright-core';

const WELL_KNOWN = [
  process.env['CHROME_PATH'],
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

const installed = (): string | undefined => {
  const found = WELL_KNOWN.find((path) => path !== undefined && existsSync(path));
  if (found !== undefined) return found;
  const own = chromium.executablePath();
  return existsSync(own) ? own : undefined;
};

const run = (command: string, ...args: string[]): boolean =>
  spawnSync(command, args, { stdio: ['ignore', 'inherit', 'inherit'] }).status === 0;

/** Path of a Chrome or Chromium: one that is there, else one installed now (apt as root, playwright's own elsewhere). */
export function findChromium(): string {
  const present = installed();
  if (present !== undefined) return present;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    run('apt-get', 'update', '-q');
    run('apt-get', 'install', '-y', '-q', '--no-install-recommends', 'chromium');
  } else {
    run(process.execPath, 'node_modules/playwright-core/cli.js', 'install', 'chromium');
  }
  const now = installed();
  if (now === undefined) throw new Error('No Chrome or Chromium found, and none could be installed. Set CHROME_PATH.');
  return now;
}

/** Starts Chromium so that it contacts no host of its own accord. */
export function launchChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath: findChromium(),
    args: [
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      // Chromium refuses to sandbox a process of root's.
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
    ],
  });
}
