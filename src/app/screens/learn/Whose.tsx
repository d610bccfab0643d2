/** Whose answer the picture shows: the learner's own, carried out, or what happens; once explained either is chosen. */
interface Props {
  /** the answer, in words */
  said: string;
  yours: boolean;
  /** null: it moves still */
  choose: ((yours: boolean) => void) | null;
}

export function Whose({ said, yours, choose }: Props) {
  const own = `As you said: ${said}`;
  if (!choose)
    return (
      <p className="whose" role="status">
        {yours ? own : 'What happens'}
      </p>
    );
  return (
    <p className="whose">
      {[true, false].map((one) => (
        <button key={String(one)} type="button" aria-pressed={one === yours} onClick={() => choose(one)}>
          {one ? own : 'What happens'}
        </button>
      ))}
    </p>
  );
}
