/** Sheet: what goes to the machine, on one or two pages. */
import { useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import type { CutReport } from '../../report/cut/definition.ts';
import { cutVerdict } from '../../report/cut/verdict.ts';
import { designWithCut } from '../../report/cut/withCut.ts';
import { fitSection } from '../../report/fit/section.ts';
import { fitVerdict } from '../../report/fit/verdict.ts';
import { tolerancedSurfaces } from '../../report/sheet/tolerancedSurfaces.ts';
import { offer } from '../files.ts';
import { Pages } from '../sheet/Pages.tsx';
import { PAPERS, type Paper } from '../sheet/papers.ts';
import { svgText } from '../sheet/svgText.ts';
import '../sheet/sheet.css';
import type { Work } from '../store.ts';
import { useSize } from '../useSize.ts';
import { useSolved } from '../useSolved.ts';

/** Every drawing of the Sheet, by the name it is marked with. */
const DRAWINGS = ['journal', 'bush', 'chart'];

const PAPER_NAMES = Object.keys(PAPERS) as Paper[];

export default function SheetScreen({ work }: { work: Work }) {
  const design = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const { value, of, fault } = useSolved('cut', design);
  const [chosen, setPaper] = useState<Paper | null>(null);
  const sheet = useRef<HTMLDivElement>(null);
  const paper = chosen ?? (system === 'inch' ? 'Letter' : 'A4');
  if (fault !== null) return <p role="alert">The plan could not be worked out: {fault}</p>;
  if (!of || (of.cut && !value)) return <p className="loading">The sheet is being drawn.</p>;
  return (
    <div className="sheet-screen" ref={sheet}>
      <section className={`verdict ${value && !value.feasible ? 'mend' : 'good'} screen-only`} aria-live="polite">
        <h2>{value ? 'Drawings, settings and stop readings for the machine.' : 'Drawings of both parts; what may be cut is said on the Cut screen.'}</h2>
        <p>Print it, or save any drawing by itself. Write what was read into the boxes, and bring it back to Measure or to a trial.</p>
      </section>
      <p className="buttons screen-only">
        <button type="button" className="main" onClick={() => window.print()}>
          Print
        </button>
        <label className="paper-choice">
          <span>Paper</span>
          <select value={paper} onChange={(event) => setPaper(event.target.value as Paper)}>
            {PAPER_NAMES.map((name) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </select>
        </label>
        {DRAWINGS.map((name) => (
          <button key={name} type="button" onClick={() => offer(`${name}.svg`, svgText(sheet.current!.querySelector<SVGSVGElement>(`[data-drawing="${name}"] svg`)!), 'image/svg+xml')}>
            Save the {name} as SVG
          </button>
        ))}
      </p>
      <Sheet design={of} cut={of.cut ? value : null} paper={paper} system={system} />
    </div>
  );
}

function Sheet({ design, cut, paper, system }: { design: Design; cut: CutReport | null; paper: Paper; system: System }) {
  const box = useRef<HTMLDivElement>(null);
  const { width } = useSize(box, { width: 800, height: 1000 });
  const made = useMemo(() => (cut ? designWithCut(design, cut) : design), [design, cut]);
  const surfaces = useMemo(() => tolerancedSurfaces(made, made.position ?? 0, cut?.steps ?? []), [made, cut]);
  const { headline } = cut ? cutVerdict(design, cut, system) : fitVerdict(design, fitSection(design), system);
  return (
    <div ref={box}>
      <Pages paper={paper} room={width} headline={headline} design={design} made={made} cut={cut} surfaces={surfaces} system={system} />
    </div>
  );
}
