/** When to save what is being typed, without saving every keystroke. */
export interface Autosave<Draft> {
  /** What stands now: saved after a pause, or after `longestMilliseconds` of unbroken typing. */
  change(draft: Draft): void;
  /** Saves now what is waiting; settles when nothing waits or is under way. Never rejects. */
  flush(): Promise<void>;
  readonly state: () => AutosaveState;
  /** Forgets what waits and saves no more. */
  stop(): void;
}

export type AutosaveState = 'idle' | 'waiting' | 'saving';

export interface AutosaveTimers {
  set(run: () => void, milliseconds: number): unknown;
  clear(timer: unknown): void;
  now(): number;
}

export interface AutosaveOptions<Draft> {
  /** Keeps a draft. One at a time, always the latest; expected to report its own failures. */
  readonly save: (draft: Draft) => Promise<void>;
  readonly onState?: (state: AutosaveState) => void;
  readonly pauseMilliseconds?: number;
  readonly longestMilliseconds?: number;
  readonly timers?: AutosaveTimers;
}

const PAUSE_MILLISECONDS = 400;
const LONGEST_MILLISECONDS = 2000;

const browserTimers: AutosaveTimers = {
  set: (run, milliseconds) => setTimeout(run, milliseconds),
  clear: (timer) => { clearTimeout(timer as ReturnType<typeof setTimeout>); },
  now: () => performance.now(),
};

/** A queue of one: while a draft is being saved only the newest of those that follow waits. */
export function createAutosave<Draft>(options: AutosaveOptions<Draft>): Autosave<Draft> {
  const { save, onState, pauseMilliseconds = PAUSE_MILLISECONDS, longestMilliseconds = LONGEST_MILLISECONDS, timers = browserTimers } = options;
  let waiting: { readonly draft: Draft; readonly since: number } | undefined;
  let underWay: Promise<void> | undefined;
  let timer: unknown;
  let stopped = false;
  let told: AutosaveState = 'idle';

  const state = (): AutosaveState => (underWay !== undefined ? 'saving' : waiting !== undefined ? 'waiting' : 'idle');
  const tell = (): void => {
    const now = state();
    if (now === told) return;
    told = now;
    onState?.(now);
  };

  const schedule = (): void => {
    timers.clear(timer);
    if (waiting === undefined) return;
    const left = longestMilliseconds - (timers.now() - waiting.since);
    timer = timers.set(() => void run(), Math.max(0, Math.min(pauseMilliseconds, left)));
  };

  const run = async (): Promise<void> => {
    if (underWay !== undefined) return underWay;
    const next = waiting;
    if (next === undefined || stopped) return;
    timers.clear(timer);
    waiting = undefined;
    underWay = save(next.draft).finally(() => {
      underWay = undefined;
      schedule();
      tell();
    });
    tell();
    return underWay;
  };

  return {
    change: (draft) => {
      if (stopped) return;
      waiting = { draft, since: waiting?.since ?? timers.now() };
      if (underWay === undefined) schedule();
      tell();
    },
    flush: async () => {
      while (!stopped && (underWay !== undefined || waiting !== undefined)) await run();
    },
    state,
    stop: () => {
      stopped = true;
      waiting = undefined;
      timers.clear(timer);
    },
  };
}

/**
 * Calls `leave` when the reader leaves: a phone that switches to another app may never come back to this page, and
 * `pagehide` is not always sent, so hiding counts as leaving. Gives back how to stop.
 */
export function whenLeaving(options: {
  readonly page: EventTarget;
  readonly document: EventTarget & { readonly visibilityState: DocumentVisibilityState };
  readonly leave: () => void;
}): () => void {
  const { page, document, leave } = options;
  const hide = (): void => {
    if (document.visibilityState === 'hidden') leave();
  };
  page.addEventListener('pagehide', leave);
  document.addEventListener('visibilitychange', hide);
  return () => {
    page.removeEventListener('pagehide', leave);
    document.removeEventListener('visibilitychange', hide);
  };
}
