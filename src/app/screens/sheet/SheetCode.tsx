/** A code that opens the design on a device with a camera; none where the page is this device’s own, or too long. */
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { useAngles } from '../../state/angles.ts';
import { isOwnDevice, linkOf } from '../../takeAlong/link.ts';
import { codeOf, QrCode } from '../../takeAlong/QrCode.tsx';

/** @param page the address the design is to be opened at */
export function SheetCode({ design, system, page }: { design: Design; system: System; page: string }) {
  const way = useAngles();
  if (isOwnDevice(page))
    return (
      <p className="small screen-only">
        No code is printed: the address of this page, {new URL(page).host || 'a file'}, is one that only this device can
        open. From a server it is.
      </p>
    );
  const link = linkOf(design, system, way, page);
  if (link === null || codeOf(link) === null) return null;
  return (
    <p className="sheet-code">
      <QrCode link={link} side="26mm" />
      <span className="small">
        Opens this design, with its readings and trials as they were when this was printed, on a device with a camera.
      </span>
    </p>
  );
}
