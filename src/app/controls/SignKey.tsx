/**
 * Turns the sign of what stands in a field. Shown where a finger types: the number keys of some phones have no minus.
 */
export function SignKey({ of, text, type }: { of: string; text: string; type(text: string): void }) {
  return (
    <button
      type="button"
      className="sign"
      aria-label="Plus or minus"
      aria-controls={of}
      // The field keeps the focus, and its keys stay up.
      onPointerDown={(event) => event.preventDefault()}
      onClick={() => {
        type(/^\s*[-−]/.test(text) ? text.replace(/^\s*[-−]\s*/, '') : `-${text.replace(/^\s*\+?\s*/, '')}`);
        document.getElementById(of)?.focus();
      }}
    >
      ±
    </button>
  );
}
