/** What can be undone and redone. A plain value: every operation gives a new one. */
export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
  /** What the last change was to, and when (ms), while it can still grow; absent after an undo or redo. */
  readonly last?: { readonly key: string; readonly atMilliseconds: number };
}

export interface Change<T> {
  readonly next: T;
  /** What is being changed, such as a field's name: changes to the same thing in quick succession undo as one. */
  readonly key: string;
  readonly atMilliseconds: number;
}

/** Steps that can be taken back. A plan is a few kilobytes, so this is well under a megabyte. */
export const HISTORY_STEPS = 200;

/** Typing pauses shorter than this belong to one edit. */
export const SAME_EDIT_MILLISECONDS = 1000;

export const startHistory = <T>(present: T): History<T> => ({ past: [], present, future: [] });

/** Adds a change; what had been undone is gone, as everywhere. The same value again changes nothing. */
export function addChange<T>(history: History<T>, change: Change<T>): History<T> {
  const { next, key, atMilliseconds } = change;
  if (Object.is(next, history.present)) return history;
  const last = { key, atMilliseconds };
  const sinceLast = history.last?.key === key ? atMilliseconds - history.last.atMilliseconds : Infinity;
  if (sinceLast >= 0 && sinceLast < SAME_EDIT_MILLISECONDS) return { past: history.past, present: next, future: [], last };
  return { past: [...history.past, history.present].slice(-HISTORY_STEPS), present: next, future: [], last };
}

/** Takes the last change back; unchanged when there is none. */
export function undo<T>(history: History<T>): History<T> {
  if (history.past.length === 0) return history;
  const present = history.past.at(-1) as T;
  return { past: history.past.slice(0, -1), present, future: [history.present, ...history.future] };
}

/** Makes an undone change again; unchanged when there is none. */
export function redo<T>(history: History<T>): History<T> {
  if (history.future.length === 0) return history;
  const present = history.future[0] as T;
  return { past: [...history.past, history.present], present, future: history.future.slice(1) };
}

export const canUndo = (history: History<unknown>): boolean => history.past.length > 0;
export const canRedo = (history: History<unknown>): boolean => history.future.length > 0;
