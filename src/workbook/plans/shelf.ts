import type { Outcome, Problem } from '../problem.ts';
import type { Notice } from '../storage/notices.ts';
import type { Rows } from '../storage/rows.ts';
import type { SetAside } from '../storage/set-aside.ts';
import type { CopyReason, SaveRequest } from './decide.ts';
import type { NoteStorage, PartingNote } from './parting-note.ts';
import type { PlanRecord, ReadPlan } from './plan-record.ts';
import type { BenchReading } from './reading.ts';
import type { ReadingShelf } from './reading-shelf.ts';

export interface ListedPlan<Plan> extends PlanRecord<Plan> {
  /** True while the latest content is only in this page: storage refused it. Export it, or `keepHeld` later. */
  readonly held: boolean;
}

export interface PlanListing<Plan> {
  /** Latest first. */
  readonly plans: readonly ListedPlan<Plan>[];
  /** Deleted and restorable, latest first. */
  readonly deleted: readonly PlanRecord<Plan>[];
  readonly setAside: readonly SetAside[];
  /** Why what is done here lasts only as long as the page, if so. */
  readonly problem: Problem | undefined;
}

export interface SaveResult<Plan> {
  /** `held`: storage refused, the content is in this page only; `problem` says why. */
  readonly kind: 'saved' | 'unchanged' | 'copied' | 'held';
  /** The plan to go on with; its `revision` is what the next save is based on. */
  readonly record: PlanRecord<Plan>;
  /** For `copied`: why the plan it was opened from was left alone. */
  readonly because?: CopyReason;
  readonly problem: Problem | undefined;
}

/** A plan to be kept for the first time, with what was measured for it. */
export interface NewPlan<Plan> {
  readonly title: string;
  readonly plan: Plan;
  readonly readings: readonly BenchReading[];
}

/** The plans of one reader on one device. No method rejects because storage failed: results carry the problem. */
export interface PlanShelf<Plan> {
  readonly readings: ReadingShelf;
  /** What a page left in the midst of typing, saved now that the plans were opened again. */
  readonly recovered: readonly SaveResult<Plan>[];
  readonly readPlan: ReadPlan<Plan>;
  list(): Promise<PlanListing<Plan>>;
  open(id: string): Promise<Outcome<PlanRecord<Plan>>>;
  /** Keeps a new plan under a fresh id. */
  add(title: string, plan: Plan): Promise<SaveResult<Plan>>;
  /** Keeps several at once: all or none reach the device. */
  addAll(plans: readonly NewPlan<Plan>[]): Promise<readonly SaveResult<Plan>[]>;
  save(request: SaveRequest<Plan>): Promise<SaveResult<Plan>>;
  duplicate(id: string): Promise<Outcome<SaveResult<Plan>>>;
  /** Puts a plan among the deleted ones; `restore` brings it back. */
  remove(id: string): Promise<Outcome<PlanRecord<Plan>>>;
  restore(id: string): Promise<Outcome<PlanRecord<Plan>>>;
  /** Erases a deleted plan and its readings for good. */
  erase(id: string): Promise<Problem | undefined>;
  /** Notes, at once, what would be lost if the page ended now. `underWay` is what is being saved at this moment. */
  leaveNote(note: PartingNote<Plan>): void;
  /** Takes such a note back, once its content is kept. */
  removeNote(id: string): void;
  /** Tries again to keep what is held in the page. */
  keepHeld(): Promise<readonly SaveResult<Plan>[]>;
  /** Hears what other tabs keep. */
  listen(hear: (notice: Notice) => void): () => void;
  readonly now: () => Date;
  readonly newId: () => string;
  close(): void;
}

export interface ShelfOptions<Plan> {
  readonly readPlan: ReadPlan<Plan>;
  /** Default: this site's database on the device. */
  readonly rows?: Rows;
  /** Where notes are left. Default: localStorage. */
  readonly noteStorage?: NoteStorage;
  readonly now?: () => Date;
  readonly newId?: () => string;
}
