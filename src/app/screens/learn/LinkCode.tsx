/** A link of Learn as a code for a camera, wherever one is shown; too long for one, that is said. */
import { codeOf, QrCode } from '../../takeAlong/QrCode.tsx';

interface Props {
  link: string;
  label: string;
}

export function LinkCode({ link, label }: Props) {
  const code = codeOf(link, LARGEST);
  if (!code) return <p className="fine">Too long for a code: send the link.</p>;
  return <QrCode link={link} most={LARGEST} side={code.size > DENSE ? 'min(26rem, 100%)' : '14rem'} label={label} />;
}

/** On a screen, a code of more squares than a printed one can still be read (a version of ISO/IEC 18004). */
const LARGEST = 30;
/** Squares on a side, its quiet ground with it, from which on it is drawn larger. */
const DENSE = 77;
