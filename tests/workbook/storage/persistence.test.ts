import { describe, expect, it } from 'vitest';
import { askToKeep } from '../../../src/workbook/storage/persistence.ts';

const storage = (persisted: boolean, persist: () => Promise<boolean>) => ({ persisted: () => Promise.resolve(persisted), persist });

describe('asking the browser to keep what is stored', () => {
  it('says what it answered', async () => {
    expect(await askToKeep(storage(false, () => Promise.resolve(true)))).toBe('granted');
    expect(await askToKeep(storage(false, () => Promise.resolve(false)))).toBe('refused');
  });

  it('does not ask again once granted', async () => {
    expect(await askToKeep(storage(true, () => Promise.reject(new Error('asked again'))))).toBe('granted');
  });

  it('does not know where it cannot ask', async () => {
    expect(await askToKeep(undefined)).toBe('unknown');
    expect(await askToKeep(storage(false, () => Promise.reject(new TypeError('no'))))).toBe('unknown');
  });
});
