import { describe, expect, it } from 'vitest';
import { addChange, canRedo, canUndo, HISTORY_STEPS, redo, startHistory, undo } from '../../../src/workbook/plans/history.ts';
import type { History } from '../../../src/workbook/plans/history.ts';

const type = (history: History<string>, ...changes: readonly [next: string, key: string, atMilliseconds: number][]): History<string> =>
  changes.reduce((now, [next, key, atMilliseconds]) => addChange(now, { next, key, atMilliseconds }), history);

describe('history', () => {
  it('goes back and forth through separate changes', () => {
    const history = type(startHistory('a'), ['b', 'volts', 0], ['c', 'amps', 100]);
    expect(undo(history).present).toBe('b');
    expect(undo(undo(history)).present).toBe('a');
    expect(redo(undo(history)).present).toBe('c');
    expect(redo(redo(undo(undo(history)))).present).toBe('c');
  });

  it('undoes quick typing in one field as one step', () => {
    const history = type(startHistory('1'), ['12', 'volts', 0], ['120', 'volts', 300], ['120.', 'volts', 1200]);
    expect(undo(history).present).toBe('1');
  });

  it('begins a new step after a pause, in another field, or when the clock went back', () => {
    expect(undo(type(startHistory('1'), ['2', 'volts', 0], ['3', 'volts', 1000])).present).toBe('2');
    expect(undo(type(startHistory('1'), ['2', 'volts', 0], ['3', 'amps', 10])).present).toBe('2');
    expect(undo(type(startHistory('1'), ['2', 'volts', 5000], ['3', 'volts', 10])).present).toBe('2');
  });

  it('begins a new step for what is typed right after an undo', () => {
    const history = type(undo(type(startHistory('1'), ['2', 'volts', 0])), ['3', 'volts', 10]);
    expect(undo(history).present).toBe('1');
    expect(canRedo(history)).toBe(false);
  });

  it('does nothing at either end, nor for the same value again', () => {
    const start = startHistory('a');
    expect(undo(start)).toBe(start);
    expect(redo(start)).toBe(start);
    expect(addChange(start, { next: 'a', key: 'volts', atMilliseconds: 0 })).toBe(start);
    expect([canUndo(start), canRedo(start)]).toEqual([false, false]);
  });

  it('remembers a bounded number of steps', () => {
    let history = startHistory(0);
    for (let next = 1; next <= HISTORY_STEPS + 50; next += 1) history = addChange(history, { next, key: String(next), atMilliseconds: next });
    expect(history.past).toHaveLength(HISTORY_STEPS);
    while (canUndo(history)) history = undo(history);
    expect(history.present).toBe(50);
    while (canRedo(history)) history = redo(history);
    expect(history.present).toBe(HISTORY_STEPS + 50);
  });
});
