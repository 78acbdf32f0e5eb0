import { afterEach, describe, expect, it, vi } from 'vitest';
import { openNotices } from '../../../src/workbook/storage/notices.ts';
import type { Notice, Notices } from '../../../src/workbook/storage/notices.ts';
import { untilHeard } from '../device.ts';

const opened: Notices[] = [];
const open = (): Notices => {
  const notices = openNotices('test-notices');
  opened.push(notices);
  return notices;
};

afterEach(() => {
  vi.unstubAllGlobals();
  for (const notices of opened.splice(0)) notices.close();
});

describe('notices between tabs', () => {
  it('reach the others and not the teller, until they stop listening', async () => {
    const [one, two] = [open(), open()];
    const heard: string[] = [];
    one.listen(() => heard.push('one'));
    const stop = two.listen(({ id }) => heard.push(id));
    one.tell({ kind: 'saved', id: 'a', revision: 1 });
    await untilHeard(() => heard.length === 1);
    stop();
    two.listen(({ id }) => heard.push(`still ${id}`));
    one.tell({ kind: 'saved', id: 'b', revision: 2 });
    await untilHeard(() => heard.length === 2);
    expect(heard).toEqual(['a', 'still b']);
  });

  it('leave out what is no notice', async () => {
    const heard: Notice[] = [];
    open().listen((notice) => heard.push(notice));
    const channel = new BroadcastChannel('test-notices');
    for (const odd of [null, 7, 'saved', {}, { kind: 'explode', id: 'a', revision: 1 }, { kind: 'saved', id: 1, revision: 1 }]) channel.postMessage(odd);
    channel.postMessage({ kind: 'saved', id: 'last', revision: 1 });
    await untilHeard(() => heard.length > 0);
    channel.close();
    expect(heard.map(({ id }) => id)).toEqual(['last']);
  });

  it('are told to nobody where the browser has no channel', () => {
    vi.stubGlobal('BroadcastChannel', undefined);
    const notices = open();
    expect(() => { notices.tell({ kind: 'wiped', id: '', revision: 0 }); }).not.toThrow();
  });
});
