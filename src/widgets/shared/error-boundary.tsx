import { Component, type ComponentChildren, type VNode } from 'preact';

interface Props {
  /** What failed, as the reader knows it. */
  readonly name: string;
  readonly children: ComponentChildren;
}

/** Keeps a failure inside one calculator from taking the page with it, and says what happened. */
export class ErrorBoundary extends Component<Props, { failed: boolean }> {
  override state = { failed: false };

  static override getDerivedStateFromError(): { failed: boolean } {
    return { failed: true };
  }

  override render({ name, children }: Props): ComponentChildren | VNode {
    if (!this.state.failed) return children;
    return (
      <div class="stopped" role="alert">
        <p>
          <strong>This calculator has stopped.</strong> “{name}” met a case that it does not handle, through a fault of
          its own. No figure of it is shown, so that none is taken for a result. The rest of the page still stands.
        </p>
        <p>
          <a href="?">Open the page again on its worked case</a>
        </p>
      </div>
    );
  }
}
