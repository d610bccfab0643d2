/**
 * Whether this machine draws solids. A context of one's own must be made to find out, which takes a busy machine a
 * second and more: a yes holds until a picture is lost.
 */
let able = false;

export function canDraw(): boolean {
  able ||= asked();
  return able;
}

/** After a picture was lost. */
export const askAgain = (): void => {
  able = false;
};

function asked(): boolean {
  try {
    const context = document.createElement('canvas').getContext('webgl2');
    context?.getExtension('WEBGL_lose_context')?.loseContext();
    return context !== null;
  } catch {
    return false;
  }
}
