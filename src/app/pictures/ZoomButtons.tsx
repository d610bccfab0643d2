/** The buttons of a drawing that zooms. */
export function ZoomButtons({ zoomIn, zoomOut, whole }: { zoomIn(): void; zoomOut(): void; whole(): void }) {
  return (
    <span className="buttons">
      <button type="button" onClick={zoomIn} aria-label="Zoom in">
        +
      </button>
      <button type="button" onClick={zoomOut} aria-label="Zoom out">
        −
      </button>
      <button type="button" onClick={whole}>
        Whole
      </button>
    </span>
  );
}
