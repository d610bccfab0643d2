/** Saves the first drawing of the figure it stands in. */
import { offer } from '../state/files.ts';
import { standaloneSvg } from './standaloneSvg.ts';

/** @param name of the file, and what is said of it where several stand on a page */
export function SaveSvg({ name }: { name: string }) {
  return (
    <button
      type="button"
      className="save-svg"
      aria-label={`Save as SVG: the ${name}`}
      onClick={({ currentTarget }) => {
        const svg = currentTarget.closest('figure')?.querySelector('svg');
        if (svg) offer(`${name.replaceAll(' ', '-')}.svg`, standaloneSvg(svg), 'image/svg+xml');
      }}
    >
      Save as SVG
    </button>
  );
}
