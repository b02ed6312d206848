/**
 * Prints one part of the page: everything that neither holds `part` nor is held by it is hidden while printing.
 * Blocks until the print window closes where the browser does so.
 */
export function printOne(part: HTMLElement): void {
  const hidden: Element[] = [];
  for (let at: Element = part; at.parentElement && at !== document.body; at = at.parentElement) {
    for (const other of at.parentElement.children) if (other !== at) hidden.push(other);
  }
  hidden.forEach((one) => one.classList.add("print-none"));
  document.body.classList.add("printing-one");
  addEventListener("afterprint", () => {
    hidden.forEach((one) => one.classList.remove("print-none"));
    document.body.classList.remove("printing-one");
  }, { once: true });
  print();
}
