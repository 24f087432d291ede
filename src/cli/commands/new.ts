import { constants } from "node:fs";
import { copyFile, readdir, readFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { nearest } from "../../input/nearest.js";
import type { AddCommand } from "../command.js";
import { type Exit, exit } from "../exit.js";
import { systemCode } from "../output/disk.js";
import { templatesFolder } from "../package.js";
import type { Terminal } from "../terminal.js";

export const addNew: AddCommand = (program, run) =>
  void program
    .command("new")
    .argument("[starter]", "which starter to copy; without it they are listed")
    .argument("[file]", "the job file to make; <starter>.yaml here where it is not given")
    .description("start a job from a starter")
    .action((starter: string | undefined, file: string | undefined) =>
      run(async (terminal) => {
        const starters = await startersThere();
        if (starter === undefined) return listStarters(starters, terminal);
        const chosen = starters.find(({ name }) => name === starter);
        if (chosen !== undefined) return copyStarter(chosen, file ?? `${starter}.yaml`, terminal);
        const names = starters.map(({ name }) => name);
        const meant = nearest(starter, names);
        terminal.err(`error  there is no starter ${starter}${meant === undefined ? "" : `: did you mean ${meant}?`}`);
        terminal.err(`  use    ${names.join(", ")}`);
        return exit.unusable;
      }),
    );

type Starter = { readonly name: string; readonly title: string; readonly shop: string | undefined };

/** Every job in the templates folder: a shop file has no title. */
async function startersThere(): Promise<readonly Starter[]> {
  const files = (await readdir(templatesFolder)).filter((file) => file.endsWith(".yaml")).sort();
  const starters = files.map(async (file) => {
    const words = await readFile(join(templatesFolder, file), "utf8");
    const title = /^title:[ \t]*(.*?)[ \t]*(#.*)?$/m.exec(words)?.[1];
    const shop = /^shop:[ \t]*([\w.-]+)/m.exec(words)?.[1];
    return title === undefined ? [] : [{ name: file.slice(0, -".yaml".length), title, shop }];
  });
  return (await Promise.all(starters)).flat();
}

function listStarters(starters: readonly Starter[], terminal: Terminal): Exit {
  const widest = Math.max(...starters.map(({ name }) => name.length));
  for (const { name, title } of starters) terminal.out(`${name.padEnd(widest)}  ${title}`);
  terminal.err("\nbafflewright new <starter> [file] copies one of them.");
  return exit.done;
}

/** A starter's shop file comes with it, unless one is there already: that is the user's own shop. */
async function copyStarter({ name, shop }: Starter, file: string, terminal: Terminal): Promise<Exit> {
  if (!(await copyNew(`${name}.yaml`, file, terminal))) return exit.unusable;
  terminal.out(`${file} is ready. Next: bafflewright check ${quoted(file)}`);
  if (shop !== undefined && (await readdir(templatesFolder)).includes(shop)) {
    const beside = join(dirname(file), shop);
    await copyFile(join(templatesFolder, shop), beside, constants.COPYFILE_EXCL).then(
      () => terminal.out(`${beside} is the shop file that goes with it: change it to what your workshop has.`),
      (error: unknown) => {
        if (systemCode(error) !== "EEXIST") throw error;
      },
    );
  }
  return exit.done;
}

async function copyNew(template: string, file: string, terminal: Terminal): Promise<boolean> {
  try {
    await copyFile(join(templatesFolder, template), file, constants.COPYFILE_EXCL);
    return true;
  } catch (error) {
    const code = systemCode(error);
    if (code === undefined) throw error;
    const why = code === "EEXIST" ? "is there already, and is never written over" : `could not be written (${code})`;
    terminal.err(`error  ${file} ${why}`);
    terminal.err(`  next   give another name: bafflewright new ${template.replace(".yaml", "")} another-name.yaml`);
    return false;
  }
}

function quoted(file: string): string {
  return /^[\w./\\:-]+$/.test(file) ? file : JSON.stringify(file);
}
