/** What could not be worked out, why, and how to go on. */
interface Props {
  /** what it is, as a sentence begins: "The plan" */
  what: string;
  fault: string | null;
  again(): void;
  /** said of more than one thing */
  several?: boolean;
}

export function Fault({ what, fault, again, several = false }: Props) {
  if (fault === null) return null;
  return (
    <div role="alert" className="fault">
      <p>
        {what} could not be worked out: {fault}. {several ? 'They' : 'It'} can be tried again; the design is kept as it
        is, and Save makes a file of it.
      </p>
      <p className="buttons">
        <button type="button" onClick={again}>
          Try again
        </button>
      </p>
    </div>
  );
}
