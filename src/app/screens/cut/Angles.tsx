/**
 * Setting the angle of every surface that is cut: the way to set it, then all ways, each with what it costs the film.
 */
import type { CSSProperties } from 'react';
import { stackText as ownStack, toolText } from '../../../design/tools.ts';
import { angleNamed, angleText, fineText, fineUnit, readingText, type System, TENTH } from '../../../design/units.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { settingSentence } from '../../../report/cut/setUpSentences.ts';
import { WAYS } from '../../../report/cut/words.ts';
import { useAngles } from '../../state/angles.ts';
import { blocksText, errorText } from './angleTexts.ts';
import { HollowFlank } from './HollowFlank.tsx';

/** Widths of the columns of figures on a phone. */
const FOUR = { '--widths': '1.35fr 0.8fr 1fr 1fr' } as CSSProperties;

type Setting = CutReport['settings'][number];

/** `blocks`: the system of the set of blocks. */
export function Angles({ cut, blocks, system }: { cut: CutReport; blocks: System; system: System }) {
  const way = useAngles();
  if (cut.settings.length === 0) return null;
  return (
    <section aria-label="Setting the angle">
      {cut.settings.map((setting) => (
        <details key={`${setting.seat} ${setting.part}`} open={cut.settings.length < 3}>
          <summary>
            {setting.seat} {setting.part}: {angleNamed(setting.halfAngle, way)}
            {setting.stands !== null && `; alone its film stands ${errorText(setting.stands)} of error`}
          </summary>
          <p>
            <strong>{settingSentence(setting, system)}</strong>
          </p>
          {setting.needed && <p>{indicatorText(setting.needed.indicator, system)}</p>}
          <p>
            {stackText(setting, blocks, system)} Dresser at {angleText(setting.dresser)} from the wheel’s axis, that
            lying along the work’s.
          </p>
          <Ways setting={setting} system={system} />
          {setting.hollow && <HollowFlank setting={setting} hollow={setting.hollow} system={system} />}
        </details>
      ))}
    </section>
  );
}

/** Whether an indicator of the usual two kinds will do, along a sine bar. */
function indicatorText(least: number, system: System): string {
  const will = (reading: number) => (least >= reading ? 'will do' : 'will not do');
  const tenths = `one of tenths${system === 'inch' ? '' : ` (${fineText(TENTH, system)})`} ${will(TENTH)}`;
  const micrometre = `one of a micrometre${system === 'inch' ? ` (${fineText(0.001, system)})` : ''} ${will(0.001)}`;
  return `Along a sine bar the indicator must tell ${fineText(least, system)}: ${system === 'inch' ? `${tenths}, ${micrometre}` : `${micrometre}, ${tenths}`}.`;
}

/** Stack and blocks, with what their miss costs. */
function stackText(setting: Setting, blocks: System, system: System): string {
  const least = LEAST * fineUnit(system).size;
  const costs =
    setting.blocksFilm === null || setting.blocksFilm < NONE
      ? ''
      : `, ${setting.blocksFilm < least ? `less than ${fineText(least, system)}` : fineText(setting.blocksFilm, system)} of film`;
  return `Sine bar of ${toolText(setting.bar, system)}: stack ${ownStack(Number(setting.stack.toFixed(4)), blocks, system)}, blocks ${blocksText(setting, blocks, system)}${costs}.`;
}

/** Nothing at all (mm of film), and the least that is told (of the unit of small lengths). */
const NONE = 1e-9;
const LEAST = 0.01;

function Ways({ setting, system }: { setting: Setting; system: System }) {
  const ways = [...setting.ways].sort((a, b) => a.film - b.film);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard
    <section className="table ways" aria-label={`Ways to set the ${setting.seat} ${setting.part}`} tabIndex={0}>
      <table className="stacked" style={FOUR}>
        <thead>
          <tr>
            <th scope="col">Way</th>
            <th scope="col">Set or read</th>
            <th scope="col">Error it leaves</th>
            <th scope="col">Costs of film</th>
            <th scope="col">Fine enough?</th>
          </tr>
        </thead>
        <tbody>
          {ways.map(({ way, reading, error, film, enough }) => (
            <tr key={way} className={way === setting.recommended ? 'chosen' : ''}>
              <th scope="row">
                {WAYS[way].name}, <small>{WAYS[way].what}</small>
              </th>
              <td>{readingText(reading, system)}</td>
              <td>{errorText(error)}</td>
              <td>{fineText(film, system)}</td>
              <td>
                {enough === null ? '—' : way === setting.recommended ? 'yes: set it so' : enough ? 'yes' : 'too coarse'}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="fine">
        {setting.room === null
          ? 'The film has no tolerance, or the plan leaves it; nothing says what is fine enough.'
          : `Fine enough: at most ${fineText(setting.room, system)} of film, so that with all other errors of the set-up the tolerance likely holds.`}{' '}
        The error counts what the indicator can tell and how it leans; kept at nought along a sine bar its lean does
        nothing.
      </p>
    </section>
  );
}
