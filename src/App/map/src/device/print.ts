// Paper: a place is printed on one page, in daylight colours, without what can only be pressed.
import { themeChanged } from "../chart/theme";
import { sizeNow } from "./size";

/** Width of a page inside its margins, and height of the smaller of A4 and Letter there: pixels of print. */
const pageWidth = 730, pageHeight = 960;
let theme: string | undefined;
let dressed = false;

function dress(): void {
  const root = document.documentElement, main = document.querySelector<HTMLElement>("main");
  // The printed day is a page of its own already.
  if (dressed || !main || main.matches(".paper")) return;
  dressed = true;
  theme = root.dataset["theme"];
  root.dataset["theme"] = "light";
  root.classList.add("printing");
  root.style.setProperty("--page", `${pageWidth}px`);
  themeChanged();
}

// The smaller the print, the more words a line holds: the page is set smaller step by step until all of it stands on one.
function fit(): void {
  const root = document.documentElement, main = document.querySelector<HTMLElement>("main");
  if (!dressed || !main) return;
  for (let share = 1; share > 0.4; share -= 0.05) {
    root.style.setProperty("--print", share.toFixed(2));
    sizeNow(false);
    if ((main.getBoundingClientRect().height + 40) * share <= pageHeight) break;
  }
  sizeNow(true);
}

function undress(): void {
  const root = document.documentElement;
  if (!dressed) return;
  dressed = false;
  root.classList.remove("printing");
  if (theme === undefined) delete root.dataset["theme"]; else root.dataset["theme"] = theme;
  themeChanged();
}

/** Prints what stands on the page; the lake's chart gets the time to paint itself at the width of the paper. */
export async function printPage(): Promise<void> {
  dress();
  await new Promise((resolve) => setTimeout(resolve, dressed ? 400 : 0));
  fit();
  window.print();
  undress();
}

// The browser's own command prints the same.
addEventListener("beforeprint", () => { dress(); fit(); });
addEventListener("afterprint", undress);
