/** Pictures of canvases that keep nothing of what they drew: drawn once more, and taken before it is gone. */
const drawers = new WeakMap<HTMLCanvasElement, () => void>();

export const redraws = (canvas: HTMLCanvasElement, draw: () => void): void => {
  drawers.set(canvas, draw);
};

export const isRedrawn = (canvas: HTMLCanvasElement): boolean => drawers.has(canvas);

export function redrawn(canvas: HTMLCanvasElement): Promise<Blob> {
  drawers.get(canvas)?.();
  return pictureOf(canvas);
}

export const pictureOf = (canvas: HTMLCanvasElement): Promise<Blob> =>
  new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('the browser makes no picture of it'))));
  });
