import type { VNode } from 'preact';

/** How far some long work is, and a way to stop it. */
export function WorkProgress(props: { readonly id: string; readonly what: string; readonly part: number; readonly onStop: () => void }): VNode {
  return (
    <p class="progress">
      <label for={props.id}>{props.what}</label>
      <progress id={props.id} max={1} value={props.part} />
      <button class="button quiet" type="button" onClick={props.onStop}>
        Stop
      </button>
    </p>
  );
}
