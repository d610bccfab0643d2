/** What is so before a question: with other numbers in every round. */
import { Explained } from '../../glossary/Explained.tsx';

export function Story({ told }: { told: readonly string[] }) {
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
