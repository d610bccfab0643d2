/** What is so before a question: with other numbers in every round. */
import { Explained } from '../../glossary/Explained.tsx';

export function Story({ told, shut = false }: { told: readonly string[]; shut?: boolean }) {
  if (shut)
    return (
      <details className="story-shut">
        <summary>What was so</summary>
        <Story told={told} />
      </details>
    );
  return (
    <div className="story">
      {told.map((text) => (
        <p key={text}>
          <Explained>{text}</Explained>
        </p>
      ))}
    </div>
  );
}
