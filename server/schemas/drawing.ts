/**
 * What the service and the pages agree on where the service draws a page: the pages' own code draws it, as their build
 * put it together for here.
 */
export interface PageToDraw {
  readonly path: string;
  /** What follows the path, with its question mark. */
  readonly search: string;
  /** What the browser says that its reader likes best; undefined where it says nothing. */
  readonly language: string | undefined;
  /** By question (path and query below the API's root): what the API answered this very caller. */
  readonly answers: ReadonlyMap<string, unknown>;
}

export interface DrawnPage {
  /** What stands in the page's place for it. */
  readonly html: string;
  /** What stands behind that: the answers, for the pages to go on with. */
  readonly answersHtml: string;
  /** Questions that the page would have to ask. */
  readonly missing: readonly string[];
}

export interface Drawer {
  /** What a page at this path asks first; empty for pages that are not drawn here. */
  readonly firstQuestions: (path: string) => readonly string[];
  readonly draw: (page: PageToDraw) => DrawnPage;
}
