import { describe, expect, it } from 'vitest';
import { createAutosave, whenLeaving } from '../../../src/workbook/plans/autosave.ts';

/** Timers that a test moves by hand. */
function handTimers() {
  let now = 0;
  const due = new Map<number, { readonly at: number; readonly run: () => void }>();
  let last = 0;
  return {
    timers: {
      set: (run: () => void, milliseconds: number) => {
        last += 1;
        due.set(last, { at: now + milliseconds, run });
        return last;
      },
      clear: (timer: unknown) => { due.delete(timer as number); },
      now: () => now,
    },
    pass: async (milliseconds: number) => {
      now += milliseconds;
      for (const [timer, { at, run }] of [...due]) {
        if (at > now) continue;
        due.delete(timer);
        run();
      }
      await Promise.resolve();
      await Promise.resolve();
    },
    pending: () => due.size,
  };
}

function setUp() {
  const hand = handTimers();
  const saved: string[] = [];
  const waiting: (() => void)[] = [];
  const states: string[] = [];
  let slow = false;
  const autosave = createAutosave<string>({
    timers: hand.timers,
    pauseMilliseconds: 400,
    longestMilliseconds: 2000,
    onState: (state) => states.push(state),
    save: (draft) => {
      saved.push(draft);
      return slow ? new Promise((resolve) => waiting.push(resolve)) : Promise.resolve();
    },
  });
  return { ...hand, autosave, saved, states, waiting, beSlow: () => { slow = true; } };
}

const settle = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('autosave', () => {
  it('saves once after a pause, and what stands then', async () => {
    const { autosave, saved, states, pass } = setUp();
    autosave.change('a');
    await pass(300);
    autosave.change('ab');
    await pass(300);
    expect(saved).toEqual([]);
    await pass(100);
    await settle();
    expect(saved).toEqual(['ab']);
    expect(states).toEqual(['waiting', 'saving', 'idle']);
  });

  it('saves in the midst of unbroken typing', async () => {
    const { autosave, saved, pass } = setUp();
    for (let at = 0; at < 20; at += 1) {
      autosave.change(`draft ${at}`);
      await pass(100);
    }
    expect(saved).toEqual(['draft 19']);
  });

  it('saves one at a time, and then only the newest', async () => {
    const { autosave, saved, waiting, pass, beSlow } = setUp();
    beSlow();
    autosave.change('a');
    await pass(400);
    autosave.change('b');
    autosave.change('c');
    await pass(5000);
    expect(saved).toEqual(['a']);
    waiting.shift()?.();
    await settle();
    await pass(400);
    expect(saved).toEqual(['a', 'c']);
  });

  it('flushes at once, through a save under way', async () => {
    const { autosave, saved, waiting, beSlow } = setUp();
    beSlow();
    autosave.change('a');
    const first = autosave.flush();
    autosave.change('b');
    const both = autosave.flush();
    expect(saved).toEqual(['a']);
    waiting.shift()?.();
    await settle();
    expect(saved).toEqual(['a', 'b']);
    waiting.shift()?.();
    await Promise.all([first, both]);
    expect(autosave.state()).toBe('idle');
  });

  it('leaves no timer behind when stopped', async () => {
    const { autosave, saved, pass, pending } = setUp();
    autosave.change('a');
    autosave.stop();
    autosave.change('b');
    await pass(5000);
    await autosave.flush();
    expect(saved).toEqual([]);
    expect(pending()).toBe(0);
  });
});

describe('leaving the page', () => {
  it('is noticed on pagehide and on hiding, not on showing, and no more once stopped', () => {
    let left = 0;
    const page = new EventTarget();
    const document = Object.assign(new EventTarget(), { visibilityState: 'visible' as DocumentVisibilityState });
    const stop = whenLeaving({ page, document, leave: () => { left += 1; } });
    document.dispatchEvent(new Event('visibilitychange'));
    expect(left).toBe(0);
    document.visibilityState = 'hidden';
    document.dispatchEvent(new Event('visibilitychange'));
    page.dispatchEvent(new Event('pagehide'));
    expect(left).toBe(2);
    stop();
    page.dispatchEvent(new Event('pagehide'));
    expect(left).toBe(2);
  });
});
