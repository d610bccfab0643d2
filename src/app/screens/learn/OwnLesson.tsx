/** An instructor's own lesson, from a file: taken whole, or refused with everything that is wrong with it. */
import { useState } from 'react';
import { decodedText } from '../../../design/decodedText.ts';
import type { Lesson } from '../../../lessons/definition.ts';
import { type LessonError, parseLesson } from '../../../lessons/validate.ts';
import { exampleOf, withItsDesign } from './builtIn.ts';

export function OwnLesson({ open }: { open(lesson: Lesson): void }) {
  const [errors, setErrors] = useState<LessonError[]>([]);
  const take = async (file: File | undefined) => {
    if (!file) return;
    const text = await file.arrayBuffer().then(
      (bytes) => decodedText(new Uint8Array(bytes)),
      () => '',
    );
    const read = parseLesson(text, exampleOf);
    setErrors(read.ok ? [] : read.errors);
    if (read.ok) open(withItsDesign(read.lesson));
  };
  return (
    <div className="own-lesson">
      <label>
        A lesson of your own, from a file{' '}
        <input type="file" accept=".json" onChange={({ target }) => void take(target.files?.[0])} />
      </label>
      {errors.length > 0 && (
        <div role="alert" className="refused">
          <p>It was not taken:</p>
          <ul>
            {errors.map(({ path, message }) => (
              <li key={`${path} ${message}`}>
                {path !== '' && <strong>{path}: </strong>}
                {message}
              </li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}
