/** The link, and its code, that a class answers by: a lesson that the program has not is in it whole. */
import { isOwnDevice, LONGEST_LINK } from '../../takeAlong/link.ts';
import { LinkCode } from './LinkCode.tsx';
import { LinkToCopy } from './LinkToCopy.tsx';

interface Props {
  /** null: too long for a link */
  text: string | null;
  long: number;
  /** the lesson itself is in it */
  carries: boolean;
}

export function ClassLink({ text, long, carries }: Props) {
  const most = LONGEST_LINK.toLocaleString('en');
  if (text === null)
    return (
      <p>
        This lesson makes a link of {long.toLocaleString('en')} characters, and {most} are the most. Type in here what
        is called out.
      </p>
    );
  return (
    <>
      <p className="fine">
        They open this link, answer, and show a code; read it with the camera of this device, and it is counted here. No
        name is in it.
        {carries && ` The lesson itself is in the link: ${long.toLocaleString('en')} of at most ${most} characters.`}
      </p>
      {isOwnDevice(text) && (
        <p>
          This page comes from this device itself, so the link opens here only. For a class, open the page from a server
          that they reach.
        </p>
      )}
      {carries ? <LinkToCopy link={text} /> : <p className="class-link">{text}</p>}
      <LinkCode link={text} label="Code for a camera: opens the question" />
    </>
  );
}
