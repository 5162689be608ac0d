/** Words with the codes of lots and batches in them, each code in one piece where there is room. */
import type { ComponentChildren } from "preact";

// Without this a hyphen is a place to break. The text itself stays as it is, to be copied.
const CODE = /([A-Z0-9]+(?:-[A-Z0-9]+)+)/;

/** Anything but plain words is left as it is. */
export function WithCodes({ words }: { words: ComponentChildren }) {
  if (typeof words !== "string") return <>{words}</>;
  return (
    <>
      {words.split(CODE).map((each, at) =>
        at % 2 === 1 ? (
          <span key={`${at}`} class="code">
            {each}
          </span>
        ) : (
          each
        ),
      )}
    </>
  );
}
