import type { Problem } from '../problem.ts';
import type { AutosaveOptions, AutosaveState } from './autosave.ts';
import { createAutosave } from './autosave.ts';
import type { CopyReason } from './decide.ts';
import type { History } from './history.ts';
import { addChange, canRedo, canUndo, redo, startHistory, undo } from './history.ts';
import type { PlanRecord } from './plan-record.ts';
import type { PlanShelf } from './shelf.ts';

/** What undo and redo move through. */
export interface PlanDraft<Plan> {
  readonly title: string;
  readonly plan: Plan;
}

export interface SessionView<Plan> {
  readonly id: string;
  readonly draft: PlanDraft<Plan>;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly saving: AutosaveState;
  /** Why the latest content is in this page only, if so: say it, and offer the export. */
  readonly problem: Problem | undefined;
  /** Set once this tab went on with a copy, because the plan it had opened changed under it. */
  readonly copied: { readonly because: CopyReason; readonly from: string } | undefined;
}

/** One plan open for editing in one tab: history, autosave, and what other tabs do to it. */
export interface PlanSession<Plan> {
  view(): SessionView<Plan>;
  /** `key` names what is changed, so that typing in one field undoes as one step. */
  change(draft: PlanDraft<Plan>, key: string): void;
  undo(): void;
  redo(): void;
  flush(): Promise<void>;
  /** To be called when the page may be ending (`whenLeaving`): notes at once what is not kept yet, then saves it. */
  leave(): void;
  /** Tells every change of the view; gives back how to stop. */
  watch(see: (view: SessionView<Plan>) => void): () => void;
  /** Saves what waits, then stops listening. */
  close(): Promise<void>;
}

export interface SessionOptions<Plan> {
  readonly shelf: PlanShelf<Plan>;
  readonly record: PlanRecord<Plan>;
  readonly timing?: Pick<AutosaveOptions<unknown>, 'timers' | 'pauseMilliseconds' | 'longestMilliseconds'>;
}

export function editPlan<Plan>(options: SessionOptions<Plan>): PlanSession<Plan> {
  const { shelf, record, timing = {} } = options;
  let { id, revision } = record;
  let history: History<PlanDraft<Plan>> = startHistory({ title: record.title, plan: record.plan });
  let problem: Problem | undefined;
  let copied: SessionView<Plan>['copied'];
  let underWay: PlanDraft<Plan> | undefined;
  let noted: string | undefined;
  const watchers = new Set<(view: SessionView<Plan>) => void>();

  const autosave = createAutosave<PlanDraft<Plan>>({
    ...timing,
    save: async (draft) => {
      underWay = draft;
      const result = await shelf.save({ id, title: draft.title, plan: draft.plan, basedOn: revision });
      underWay = undefined;
      if (result.because !== undefined) copied = { because: result.because, from: id };
      ({ id, revision } = result.record);
      problem = result.problem;
      // A note about older content must not come back later; one about what storage refused must stay.
      if (noted !== undefined && problem === undefined && draft === history.present) {
        shelf.removeNote(noted);
        noted = undefined;
      }
    },
    onState: () => { show(); },
  });

  const view = (): SessionView<Plan> => ({
    id,
    draft: history.present,
    canUndo: canUndo(history),
    canRedo: canRedo(history),
    saving: autosave.state(),
    problem,
    copied,
  });
  const show = (): void => {
    for (const see of [...watchers]) see(view());
  };
  const moveTo = (next: History<PlanDraft<Plan>>): void => {
    if (next === history) return;
    history = next;
    autosave.change(history.present);
    show();
  };

  const stopListening = shelf.listen((notice) => {
    if (notice.kind !== 'saved' || notice.id !== id || notice.revision <= revision || autosave.state() !== 'idle') return;
    // Nothing of ours waits: follow the other tab. The step can be undone like one's own.
    void shelf.open(id).then((outcome) => {
      if (!outcome.ok || outcome.value.id !== id || outcome.value.revision <= revision || autosave.state() !== 'idle') return;
      const { title, plan } = outcome.value;
      ({ revision } = outcome.value);
      history = addChange(history, { next: { title, plan }, key: `revision ${revision}`, atMilliseconds: shelf.now().getTime() });
      show();
    });
  });

  return {
    view,
    change: (next, key) => { moveTo(addChange(history, { next, key, atMilliseconds: shelf.now().getTime() })); },
    undo: () => { moveTo(undo(history)); },
    redo: () => { moveTo(redo(history)); },
    flush: () => autosave.flush(),
    leave: () => {
      if (autosave.state() === 'idle' && problem === undefined) return;
      noted = id;
      const { title, plan } = history.present;
      shelf.leaveNote({ request: { id, title, plan, basedOn: revision }, ...(underWay === undefined ? {} : { underWay }) });
      void autosave.flush();
    },
    watch: (see) => {
      watchers.add(see);
      return () => watchers.delete(see);
    },
    close: async () => {
      stopListening();
      await autosave.flush();
      autosave.stop();
      watchers.clear();
    },
  };
}
