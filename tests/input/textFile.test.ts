import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { mostBytes, readTextFile, textFileFindings } from "../../src/input/textFile.js";
import { wordsOf } from "../../src/input/words.js";

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "text-file-"));
  await mkdir(join(folder, "sub"));
  await writeFile(join(folder, "job.yaml"), "title: Würfel, 90°\n");
  await writeFile(join(folder, "latin.yaml"), Buffer.from([0x74, 0xfc, 0x0a]));
  await writeFile(join(folder, "large.yaml"), Buffer.alloc(mostBytes + 1, "#"));
  await writeFile(join(folder, "full.yaml"), Buffer.alloc(mostBytes, "#"));
});
afterAll(() => rm(folder, { recursive: true }));

it("reads UTF-8", async () => {
  expect((await readTextFile(join(folder, "job.yaml"))).value).toBe("title: Würfel, 90°\n");
});

it("takes a file of the largest size and refuses one byte more unread", async () => {
  expect((await readTextFile(join(folder, "full.yaml"))).value).toHaveLength(mostBytes);
  expect((await readTextFile(join(folder, "large.yaml"))).findings).toMatchObject([{ code: "file-too-large" }]);
});

it.each([
  ["sub", "not-a-file"],
  ["latin.yaml", "not-utf8"],
  ["jbo.yaml", "no-such-file"],
  ["nowhere/job.yaml", "no-such-file"],
])("says why %s cannot be read, in whole sentences", async (name, code) => {
  const { value, findings } = await readTextFile(join(folder, name));
  expect(value).toBeUndefined();
  expect(findings).toMatchObject([{ code }]);
  const def = textFileFindings.find((known) => known.code === code)!;
  expect(wordsOf(findings[0]!, def, { unit: "mm" }).words).toContain(name);
});

it("says that the system refused, where it did", async () => {
  expect((await readTextFile(join(folder, "a\0b"))).findings).toMatchObject([{ code: "unreadable-file" }]);
});

it("names the file that was meant", async () => {
  expect((await readTextFile(join(folder, "jbo.yaml"))).findings[0]?.facts.nearest).toEqual({
    unit: "text",
    value: "job.yaml",
  });
});
