import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { parseLength } from "../../src/input/length.js";
import { jobJsonSchema } from "../../src/job/jsonSchema.js";
import { kinds } from "../../src/pieces/kinds.js";
import { jobText, testKinds } from "./jobText.js";

type Schema = {
  readonly $schema: string;
  readonly required: readonly string[];
  readonly properties: Readonly<Record<string, unknown>>;
  readonly additionalProperties: boolean;
  readonly $defs: Readonly<Record<string, { readonly anyOf: readonly { readonly pattern?: string }[] }>>;
};

const schema = jobJsonSchema(testKinds) as Schema;

/** Whether Python's jsonschema, an independent reader of draft 2020-12, is on this machine. */
const hasReader = spawnSync("python3", ["-c", "import jsonschema"]).status === 0;

/** What that reader says of each job: "valid" or the path of the first error. */
function validated(of: object, jobs: readonly unknown[]): readonly string[] {
  const program = [
    "import json, sys, jsonschema",
    "schema, jobs = json.load(sys.stdin)",
    "jsonschema.Draft202012Validator.check_schema(schema)",
    "reader = jsonschema.Draft202012Validator(schema)",
    "first = lambda job: next((e.json_path for e in reader.iter_errors(job)), 'valid')",
    "json.dump([first(job) for job in jobs], sys.stdout)",
  ].join("\n");
  const run = spawnSync("python3", ["-c", program], { input: JSON.stringify([of, jobs]), encoding: "utf8" });
  if (run.status !== 0) throw new Error(run.stderr);
  return JSON.parse(run.stdout) as string[];
}

describe("jobJsonSchema", () => {
  it("is of draft 2020-12, closed, and asks for what a job needs", () => {
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    expect([...schema.required].sort()).toEqual(["space", "title", "units", "version"]);
    expect(schema.additionalProperties).toBe(false);
    expect(Object.keys(schema.properties)).toEqual(
      expect.arrayContaining(["boards", "cut by", "drivers", "pieces", "show", "space"]),
    );
  });

  it("takes and refuses the same lengths as the reader of a job in inches", () => {
    const pattern = new RegExp(schema.$defs.length!.anyOf.find((form) => form.pattern !== undefined)!.pattern!, "u");
    for (const text of ["18", "18mm", "3/4", '11 5/8"', "1'-2 1/2\"", "29.5cm", "½in", "18 mn", "", "1e3", "3/0in"]) {
      expect(pattern.test(text)).toBe(parseLength(text, "in") !== undefined);
    }
  });

  it("is the same each time it is made", () => {
    expect(JSON.stringify(jobJsonSchema(kinds))).toBe(JSON.stringify(jobJsonSchema(kinds)));
  });

  it.skipIf(!hasReader)("is taken by an independent reader, which judges jobs as parseJob does", () => {
    const jobs = [
      jobText(),
      jobText({ title: "" }),
      jobText({ boards: "boards: {box: {stock: mdf-18, measured: 3/4 inn}}" }),
      jobText({ boards: "boards: {box: {stock: mdf-18, mesured: 18}}" }),
      jobText({ boards: "boards: {'a/b': {stock: mdf-18}}" }),
      jobText({ outline: '  outline: [{at: [0, 0]}, {at: [3 ft, 0]}, {at: [0, 11 5/8"]}]' }),
      jobText({ pieces: "pieces: {rail: {kind: strip, board: box, wide: fre}}" }),
    ];
    const answers = validated(
      schema,
      jobs.map((job) => parse(job)),
    );
    expect(answers.map((answer) => answer === "valid")).toEqual([true, false, false, false, false, true, false]);
  });

  it.skipIf(!hasReader)("has the starter job taken by an independent reader", () => {
    const starter = parse(readFileSync("templates/estate-cargo.yaml", "utf8"));
    expect(validated(jobJsonSchema(kinds), [starter])).toEqual(["valid"]);
  });
});
