/** A file made on this phone, handed to the browser to keep; no server has a part in it. */

const FREED_AFTER_MS = 10_000; // the browser has read it long before

/** Offers `text` under `name`; `type` is its media type. */
export function keepFile(name: string, text: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), FREED_AFTER_MS);
}
