/** What is taken for granted, and what comes first at the machine. */
import type { FilmReport } from '../../../report/film/definition.ts';

export function Idealisations({ film }: { film?: FilmReport | null }) {
  const accuracy = film?.accuracy;
  return (
    <section className="run" aria-label="What is taken for granted">
      <h2>What is taken for granted</h2>
      <p className="notes">
        Rigid parts; oil that flows laminar and is Newtonian, of one temperature in each seat; oil at hand wherever a
        film opens, unless grooves are drawn, and films that break rather than pull; load and axis at rest. Parts grow
        evenly, each at one temperature. Housing, drive and bench are left out.
      </p>
      {accuracy && (
        <p className="notes">
          Solved on {accuracy.rows} × {accuracy.columns} cells a seat; against half as fine a grid the forces are good
          to about {(100 * accuracy.force).toPrecision(1)} %. Warm-up and sweeps on {accuracy.warmRows} ×{' '}
          {accuracy.warmColumns}.
        </p>
      )}
      <p className="notes">
        Before it runs: guards on, chuck key out, nobody in line with the work. A spindle new to its bush is run in
        slowly, with a hand on the headstock and an eye on the oil, and stopped when it grows hot or the note changes;
        the oil that runs off is hot. The machine’s own manual comes first: its oil, its speeds, its clearance.
      </p>
    </section>
  );
}
