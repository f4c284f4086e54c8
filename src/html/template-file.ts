/** A template before it is compiled. */

/** A template's text and the file to name where it is broken. */
export interface TemplateFile {
  readonly file: string;
  readonly text: string;
}
