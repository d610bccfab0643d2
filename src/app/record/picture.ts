/** A picture from a file, scaled down to what a record needs. */
export interface Scaled {
  blob: Blob;
  width: number;
  height: number;
}

/** Picture elements of the longer side; and how strongly it is packed. Common practice, no source. */
const LONGEST_SIDE = 1600;
const QUALITY = 0.85;
/** Bytes of a file that is looked into. */
const LARGEST_FILE = 100_000_000;

/** As JPEG, upright; null where the browser can make no picture of it. */
export async function scaledDown(file: Blob): Promise<Scaled | null> {
  if (file.size > LARGEST_FILE) return null;
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => null);
  if (!picture) return null;
  const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  const [width, height] = [picture.width, picture.height].map((side) => Math.max(1, Math.round(side * scale))) as [
    number,
    number,
  ];
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [width, height];
  const context = canvas.getContext('2d');
  if (!context) return null;
  // What shows through in other kinds of picture is white paper in this one.
  context.fillStyle = '#fff';
  context.fillRect(0, 0, width, height);
  context.drawImage(picture, 0, 0, width, height);
  picture.close();
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', QUALITY));
  return blob && { blob, width, height };
}
