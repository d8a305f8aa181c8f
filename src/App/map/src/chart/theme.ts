import { changed } from "./model";
export const themeChanged = (): void => changed("theme");
