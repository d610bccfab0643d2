/** Every quantity of the pair as a field that takes its own unit, with position and exaggeration above them. */
import { useEffect, useId, useState } from 'react';
import { useStore } from 'zustand';
import type { Design, Part, Surface } from '../../design/definition.ts';
import { angleText, fineExact, fineUnit, lengthText, lengthUnit, type Typed, taperOfHalfAngle, typedHalfAngle, typedLength } from '../../design/units.ts';
import type { Work } from '../store.ts';

export function FitControls({ work, drawnFactor }: { work: Work; drawnFactor: number }) {
  const { design, system, factor } = useStore(work.store);
  const fine = fineUnit(system);
  const length = lengthUnit(system);
  const asFine = (text: string) => typedLength(text, fine.size);
  const asLength = (text: string) => typedLength(text, length.size);
  const editSurface = (seat: number, part: Part, key: keyof Surface) => (value: number) => work.change((d) => ({ ...d, seats: d.seats.map((s, i) => (i === seat ? { ...s, [part]: { ...s[part], [key]: value } } : s)) }));
  const surfaceFields = [
    ['diameter', 'Diameter'],
    ['station', 'at station'],
    ['from', 'Rear end'],
    ['to', 'Nose end'],
  ] as const;
  return (
    <section className="controls" aria-label="Controls">
      <div className="row">
        <Field label="Position" shown={fineExact(design.position ?? 0, system)} read={asFine} set={(position) => work.change((d) => ({ ...d, position }))} />
        <label className="wide">
          <span>
            Gaps drawn ×{Math.round(drawnFactor).toLocaleString('en')}
            {Math.round(drawnFactor) < Math.round(factor) && ` (×${Math.round(factor).toLocaleString('en')} asked; no more fits)`}
          </span>
          <input type="range" min={0} max={Math.log10(5000)} step={0.01} value={Math.log10(factor)} onChange={(event) => work.store.setState({ factor: Math.min(5000, 10 ** Number(event.target.value)) })} />
        </label>
        <Field label="Adjuster pitch" shown={design.adjuster ? lengthText(design.adjuster.pitch, system) : ''} read={asLength} set={(pitch) => work.change((d) => ({ ...d, adjuster: { pitch } }))} />
      </div>
      {design.seats.map((seat, i) => (
        <details key={seat.name}>
          <summary>
            {seat.name} seat: half angle {angleText(seat.bush.halfAngle)} (included {angleText(Math.abs(2 * seat.bush.halfAngle))}, {taperText(seat.bush.halfAngle)})
          </summary>
          {(['journal', 'bush'] as const).map((part) => (
            <fieldset key={part} className="row">
              <legend>{part}</legend>
              <Field label="Half angle" shown={angleText(seat[part].halfAngle)} read={typedHalfAngle} set={editSurface(i, part, 'halfAngle')} />
              {surfaceFields.map(([key, label]) => (
                <Field key={key} label={label} shown={lengthText(seat[part][key], system)} read={asLength} set={editSurface(i, part, key)} />
              ))}
            </fieldset>
          ))}
          <fieldset className="row">
            <legend>film</legend>
            <Field label="Wanted" shown={seat.film ? fineExact(seat.film.target, system) : ''} read={asFine} set={(target) => editFilm(work, i, { tolerance: 0, ...seat.film, target })} />
            {seat.film && <Field label="Tolerance ±" shown={fineExact(seat.film.tolerance ?? 0, system)} read={asFine} set={(tolerance) => editFilm(work, i, { ...seat.film!, tolerance })} />}
          </fieldset>
        </details>
      ))}
    </section>
  );
}

function editFilm(work: Work, seat: number, film: NonNullable<Design['seats'][number]['film']>) {
  return work.change((d) => ({ ...d, seats: d.seats.map((s, i) => (i === seat ? { ...s, film } : s)) }));
}

function taperText(halfAngle: number): string {
  const taper = Math.abs(taperOfHalfAngle(halfAngle));
  return taper === 0 ? 'straight' : `1:${(1 / taper).toFixed(3)}, ${(taper * 12).toFixed(4)} in/ft`;
}

interface FieldProps {
  label: string;
  shown: string;
  read(text: string): Typed;
  set(value: number): { path: string; message: string }[];
}

/** A text field: what is typed is taken on Enter or on leaving it; what cannot be taken says why and stays. */
function Field({ label, shown, read, set }: FieldProps) {
  const id = useId();
  const [text, setText] = useState(shown);
  const [error, setError] = useState('');
  useEffect(() => {
    setText(shown);
    setError('');
  }, [shown]);
  const take = () => {
    if (text === shown) return setError('');
    const typed = read(text.replace('−', '-'));
    if (!typed.ok) return setError(typed.message);
    const errors = set(typed.value);
    setError(errors[0]?.message ?? '');
    if (errors.length === 0) setText(shown);
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        inputMode="text"
        autoComplete="off"
        value={text}
        aria-invalid={error !== ''}
        aria-describedby={error === '' ? undefined : `${id}e`}
        onChange={(event) => setText(event.target.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
          if (event.key === 'Escape') setText(shown);
        }}
      />
      {error !== '' && (
        <span id={`${id}e`} className="error">
          {error}
        </span>
      )}
    </div>
  );
}
