import path from "node:path";

const SOURCE_ENDING = /\.(ts|tsx|mts|mjs|json|md)$/;
const OWN_FOLDER = /^(app|lib|db|test|\.ci)\//;
const PATH_LIKE = /^[\w@.[\]-]+(\/[\w@.[\]-]+)*\/?$/;

/** Folders of `lib` and npm scripts that no document mentions. */
export function unmentioned(text: string, { folders, scripts }: { folders: string[]; scripts: string[] }): string[] {
  const named = (folder: string) => new RegExp(`(?<![\\w-])${folder}[/\`\\s]`).test(text);
  const told = (script: string) => new RegExp(`npm (run (-s )?)?${script}(?![\\w:-])`).test(text);
  return [
    ...folders.filter((folder) => !named(folder)).map((folder) => `the folder lib/${folder} is not described`),
    ...scripts.filter((script) => !told(script)).map((script) => `the script npm run ${script} is not described`),
  ];
}

/**
 * Paths in backticks or code blocks that do not exist. One that begins with a folder of the project must be there as
 * it stands; a bare name of a source file must be the name of some file.
 */
export function missingPaths(document: string, text: string, files: ReadonlySet<string>): string[] {
  const names = new Set([...files].map((file) => path.posix.basename(file)));
  const exists = (named: string): boolean => {
    const wanted = named.replace(/\/$/, "");
    if (!OWN_FOLDER.test(named)) return wanted.includes("/") ? endsLike(files, wanted) : names.has(wanted);
    return files.has(wanted) || [...files].some((file) => file.startsWith(`${wanted}/`) || isModule(file, wanted));
  };
  const missing = [...new Set(namedPaths(text))].filter((named) => !exists(named));
  return missing.map((named) => `${document} names ${named}, which is not there`);
}

/** Whether a name is a file's without its ending, as imports give it. */
function isModule(file: string, name: string): boolean {
  return file.startsWith(`${name}.`) && SOURCE_ENDING.test(file);
}

function endsLike(files: ReadonlySet<string>, wanted: string): boolean {
  return files.has(wanted) || [...files].some((file) => file.endsWith(`/${wanted}`));
}

function namedPaths(text: string): string[] {
  const blocks = [...text.matchAll(/^```[^\n]*\n(.*?)^```/gms)].map((match) => match[1] ?? "");
  const inline = [...text.replaceAll(/^```.*?^```/gms, "").matchAll(/`([^`\n]+)`/g)].map((match) => match[1] ?? "");
  const words = [...blocks, ...inline]
    .flatMap((code) => code.split(/\s+/))
    .map((word) => word.replace(/[,;:.)]+$/, ""));
  return words.filter((word) => PATH_LIKE.test(word) && (OWN_FOLDER.test(word) || SOURCE_ENDING.test(word)));
}
