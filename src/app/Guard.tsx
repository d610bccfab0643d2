/** Holds back a fault of ours within one screen: the work is kept, the bar stays, and the fault is told. */
import { Component, type ReactNode } from 'react';

interface Props {
  children: ReactNode;
}

export class Guard extends Component<Props, { fault: string | null }> {
  override state: { fault: string | null } = { fault: null };

  static getDerivedStateFromError(error: unknown) {
    return { fault: error instanceof Error ? error.message : String(error) };
  }

  override render() {
    if (this.state.fault === null) return this.props.children;
    return (
      <div role="alert" className="refused">
        <h2>This screen cannot be shown; that is a fault of the program, not yours.</h2>
        <p>The design is kept. Undo the last change, open another screen, or save the design and report: {this.state.fault}</p>
        <button type="button" onClick={() => this.setState({ fault: null })}>
          Try again
        </button>
      </div>
    );
  }
}
