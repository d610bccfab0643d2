/** The notebook to and from a spreadsheet: a file, or what was copied there. */
import { useRef, useState } from 'react';
import { useStore } from 'zustand';
import { decodedText } from '../../../design/decodedText.ts';
import { inSystem } from '../../../design/quantity.ts';
import { readingsFromCsv, readingsToCsv, type TableError } from '../../../report/measure/csv.ts';
import { offer } from '../../state/files.ts';
import type { Work } from '../../state/store.ts';
import { withReadings } from './entries.ts';

const SHOWN = 12;

export function TableOfReadings({ work }: { work: Work }) {
  const picker = useRef<HTMLInputElement>(null);
  const readings = useStore(work.store, (state) => state.design.readings) ?? [];
  const [text, setText] = useState('');
  const [errors, setErrors] = useState<TableError[]>([]);
  /** The row of names that what was refused wants above it, and the rows. */
  const [headed, setHeaded] = useState<string | null>(null);
  const [ignored, setIgnored] = useState<string[]>([]);
  const system = useStore(work.store, (state) => state.system);
  const take = (table: string) => {
    const { design } = work.store.getState();
    setIgnored([]);
    const result = readingsFromCsv(table, design, system);
    setHeaded(!result.ok && result.heading ? `${result.heading}\n${table}` : null);
    if (!result.ok) return setErrors(result.errors);
    const refused = work.change((d) => withReadings(d, result.readings));
    setErrors(refused.map(({ path, message }) => ({ row: 0, column: path, message })));
    if (refused.length > 0) return;
    setText('');
    setIgnored(result.ignored);
  };
  const putHeading = (table: string) => {
    setText(table);
    setErrors([]);
    setHeaded(null);
  };
  const pick = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (file) take(decodedText(new Uint8Array(await file.arrayBuffer())));
    input.value = '';
  };
  return (
    <details>
      <summary>To and from a spreadsheet</summary>
      <label className="pasted">
        <span>
          Rows copied from a spreadsheet, the names of the columns above them; a name may say its unit: value (in)
        </span>
        <textarea
          rows={4}
          value={text}
          spellCheck={false}
          onChange={(event) => setText(event.target.value)}
          placeholder={'kind;seat;part;value;sigma;station\ndiameter;shallow;bush;21.998;0.001;-2'}
        />
      </label>
      <p className="buttons">
        <button type="button" onClick={() => take(text)} disabled={text.trim() === ''}>
          Add these rows
        </button>
        <button type="button" onClick={() => picker.current?.click()}>
          Add from a CSV file…
        </button>
        <input
          ref={picker}
          type="file"
          accept=".csv,text/csv,text/plain"
          hidden
          onChange={(event) => pick(event.target)}
        />
        <button
          type="button"
          onClick={() => offer('readings.csv', readingsToCsv(readings, system), 'text/csv')}
          disabled={readings.length === 0}
        >
          Save as CSV
        </button>
      </p>
      {ignored.length > 0 && (
        <p role="status">
          Added without the {ignored.length === 1 ? 'column' : 'columns'}{' '}
          {ignored.map((name) => `“${name}”`).join(', ')}, which no reading has.
        </p>
      )}
      {errors.length > 0 && (
        <div role="alert" className="refused">
          <h2>
            {headed !== null
              ? 'Nothing was added: the rows have no heading.'
              : `Nothing was added: ${errors.length} ${errors.length === 1 ? 'entry is' : 'entries are'} wrong.`}
          </h2>
          <ul>
            {errors.slice(0, SHOWN).map(({ row, column, message }) => (
              <li key={`${row} ${column} ${message}`}>
                {row > 0 && `Row ${row}`}
                {column !== '' && `, ${column}`}: {inSystem(message, system)}
              </li>
            ))}
            {errors.length > SHOWN && <li>and {errors.length - SHOWN} more</li>}
          </ul>
          {headed !== null && (
            <p className="buttons">
              <button type="button" onClick={() => putHeading(headed)}>
                Put this heading above them
              </button>
              <span>Look whether the columns stand in that order; then add the rows.</span>
            </p>
          )}
        </div>
      )}
    </details>
  );
}
