/** What one tab tells the others after something was kept. */
export interface Notice {
  readonly kind: 'saved' | 'removed' | 'restored' | 'erased' | 'wiped';
  /** What it happened to; '' for everything. */
  readonly id: string;
  readonly revision: number;
}

export interface Notices {
  tell(notice: Notice): void;
  /** Hears what other tabs (and other stores in this one) tell; gives back how to stop. */
  listen(hear: (notice: Notice) => void): () => void;
  close(): void;
}

const KINDS: readonly string[] = ['saved', 'removed', 'restored', 'erased', 'wiped'];

const isNotice = (value: unknown): value is Notice =>
  typeof value === 'object' && value !== null &&
  'kind' in value && typeof value.kind === 'string' && KINDS.includes(value.kind) &&
  'id' in value && typeof value.id === 'string' &&
  'revision' in value && typeof value.revision === 'number';

/**
 * Notices between the tabs of one reader. They only save a tab from working on an old copy: whether a save may
 * overwrite is decided inside the storage transaction. Where the browser has no such channel, nothing is told.
 */
export function openNotices(name: string): Notices {
  const hearers = new Set<(notice: Notice) => void>();
  let channel: BroadcastChannel | undefined;
  try {
    channel = new BroadcastChannel(name);
    channel.onmessage = (event: MessageEvent<unknown>) => {
      const notice = event.data;
      if (isNotice(notice)) for (const hear of [...hearers]) hear(notice);
    };
  } catch {
    channel = undefined;
  }
  return {
    tell: (notice) => channel?.postMessage(notice),
    listen: (hear) => {
      hearers.add(hear);
      return () => hearers.delete(hear);
    },
    close: () => {
      hearers.clear();
      channel?.close();
    },
  };
}
