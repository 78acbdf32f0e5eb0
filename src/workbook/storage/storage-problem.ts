import type { Problem } from '../problem.ts';
import { refused } from '../problem.ts';

const nameOf = (error: unknown): string => {
  if (typeof error !== 'object' || error === null || !('name' in error)) return '';
  return typeof error.name === 'string' ? error.name : '';
};

/** What a browser's storage error means to the reader. `opening`: the database could not even be opened. */
export function storageProblem(error: unknown, opening: boolean): Problem {
  const name = nameOf(error);
  const say = (kind: Problem['kind'], message: string): Problem => refused(kind, '', message).problem;
  if (name === 'QuotaExceededError') {
    return say('full', 'There is no room left on this device for this site. Your work goes on in this page only: export it as a file, then free some room.');
  }
  if (name === 'VersionError') {
    return say('newer', 'What is kept on this device was written by a later version of the site. Reload the page; until then your work stays in this page only.');
  }
  if (opening && name !== 'TimeoutError') {
    return say('denied', 'This browser does not let the site keep anything (a private window, or a setting). Your work stays in this page only: export it as a file before you leave.');
  }
  const detail = error instanceof Error || error instanceof DOMException ? ` (${name}: ${error.message})` : '';
  return say('failed', `Storage on this device failed${detail}. Your work goes on in this page only: export it as a file.`);
}
