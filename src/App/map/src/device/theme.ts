// Light by day, by night, in full sun. Remembered on the device; without a choice the system decides.
import { themeChanged } from "../chart/theme";

const key = "second-shore-theme";

export function applyTheme(theme: string): void {
  if (theme === "") { delete document.documentElement.dataset["theme"]; localStorage.removeItem(key); }
  else { document.documentElement.dataset["theme"] = theme; localStorage.setItem(key, theme); }
  requestAnimationFrame(themeChanged);
}

export const storedTheme = (): string => localStorage.getItem(key) ?? "";
export const systemDark = (): boolean => matchMedia("(prefers-color-scheme: dark)").matches;

const first = storedTheme();
if (first) document.documentElement.dataset["theme"] = first;
matchMedia("(prefers-color-scheme: dark)").addEventListener("change", themeChanged);
