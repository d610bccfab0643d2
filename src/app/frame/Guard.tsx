/** Holds back a fault of ours within one part of the page: the work is kept, the bar stays, and the fault is told. */
import { Component, createContext, type ReactNode } from 'react';
import type { Work } from '../state/store.ts';

/** Whose change of the design is a reason to try once more. */
export const GuardedWork = createContext<Work | null>(null);

/** A part of the program that was to be loaded, and was not. */
export class NotLoaded extends Error {
  constructor(reason: unknown) {
    super(reason instanceof Error ? reason.message : String(reason));
  }
}

interface Props {
  /** what is guarded, as a sentence begins */
  what: string;
  /** done before it is tried once more */
  again?(): void;
  children: ReactNode;
}

export class Guard extends Component<Props, { fault: unknown }> {
  static override contextType = GuardedWork;
  declare context: Work | null;
  override state: { fault: unknown } = { fault: null };
  private forget = () => {};

  static getDerivedStateFromError(error: unknown) {
    return { fault: error ?? new Error('unknown') };
  }

  // Undo, or another design, may be all it takes; what could not be loaded is not loaded by that.
  override componentDidMount() {
    this.forget =
      this.context?.store.subscribe(({ design }, before) => {
        if (design !== before.design && this.state.fault !== null && !(this.state.fault instanceof NotLoaded))
          this.setState({ fault: null });
      }) ?? this.forget;
  }

  override componentWillUnmount() {
    this.forget();
  }

  override render() {
    const { fault } = this.state;
    if (fault === null) return this.props.children;
    const again = () => {
      this.props.again?.();
      this.setState({ fault: null });
    };
    return (
      <div role="alert" className="refused">
        {fault instanceof NotLoaded ? (
          <Unloaded what={this.props.what} />
        ) : (
          <Broken what={this.props.what} fault={fault} />
        )}
        <button type="button" onClick={again}>
          Try again
        </button>
      </div>
    );
  }
}

function Unloaded({ what }: { what: string }) {
  return (
    <>
      <h2>{what} could not be loaded: the place this page comes from does not answer.</h2>
      <p>
        What is loaded goes on working, and Save makes a file of the design. Try again once it answers; where that does
        not help, load the page anew.
      </p>
    </>
  );
}

function Broken({ what, fault }: { what: string; fault: unknown }) {
  return (
    <>
      <h2>{what} cannot be shown; that is a fault of the program, not yours.</h2>
      <p>
        The design is kept. Undo the last change, open another screen, or save the design and report:{' '}
        {fault instanceof Error ? fault.message : String(fault)}
      </p>
    </>
  );
}
