/** Gives the reader a file under `name`. Text is written as UTF-8. */
export function download(name: string, content: Blob | string, type = "text/plain;charset=utf-8"): void {
  const address = URL.createObjectURL(typeof content === "string" ? new Blob([content], { type }) : content);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // Some browsers read the address only after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
