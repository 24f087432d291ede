import { describe, expect, it } from "vitest";
import { readYaml } from "../../src/input/yaml.js";

/** The codes of a file's findings with line and column. */
function told(source: string) {
  const { findings, locate } = readYaml(source, "job.yaml");
  return findings.map((finding) => {
    const { line, column } = locate(finding.at[0]!);
    return `${finding.code} ${line}:${column}`;
  });
}

describe("readYaml", () => {
  it("reads maps, lists, texts and numbers, keys always as words", () => {
    const { value, findings } = readYaml(
      'version: 1\na: {b: [1, 2]}\n1: x\nlength: 11 5/8"\nyes: 1\'-2 1/2"\n',
      "job.yaml",
    );
    expect(findings).toEqual([]);
    expect(value?.data).toEqual({ version: 1, a: { b: [1, 2] }, "1": "x", length: '11 5/8"', yes: "1'-2 1/2\"" });
  });

  it("repeats what an anchor marked", () => {
    expect(readYaml("a: &x {b: 1}\nc: *x\n", "job.yaml").value?.data).toEqual({ a: { b: 1 }, c: { b: 1 } });
    expect(readYaml("a: &x 1\nb: *x\nc: &x 2\nd: *x\n", "job.yaml").value?.data).toEqual({ a: 1, b: 1, c: 2, d: 2 });
  });

  it.each([
    ["an empty file", "", ["empty-file 1:1"]],
    ["only comments", "# nothing\n", ["empty-file 1:1"]],
    ["a list", "- a\n- b\n", ["not-a-map 1:1"]],
    ["a single word", "hello", ["not-a-map 1:1"]],
    ["a key twice", "a: 1\nb: 2\na: 3\n", ["duplicate-key 3:1"]],
    ["a key twice, ended as on Windows", "a: 1\r\nb: 2\r\na: 3\r\n", ["duplicate-key 3:1"]],
    ["a key twice in braces", "a: {b: 1, b: 2}\n", ["duplicate-key 1:11"]],
    ["a tab", "a:\n\tb: 2\n", ["tab-indent 2:1"]],
    ["an alias of nothing", "a: &foo 1\nb: *fooo\n", ["unknown-alias 2:4"]],
    ["an alias within itself", "a: &a [*a]\n", ["too-deep 1:7"]],
    ["a second document", "a: 1\n---\nb: 2\n", ["several-documents 2:1"]],
    ["keys that computers keep", "__proto__: {x: 1}\nconstructor: 2\n", ["forbidden-key 1:1", "forbidden-key 2:1"]],
    ["a list as a key", "? [a, b]\n: 1\n", ["unreadable-yaml 1:3"]],
    ["no key at all", ": 3\n", ["forbidden-key 1:1"]],
    ["a zero byte", "a: 1\nb: \0\n", ["not-plain-text 2:4"]],
    ["two colons", "title: a: b\n", ["unreadable-yaml 1:8"]],
    ["an open bracket", "a: [1, 2\n", ["unreadable-yaml 2:1"]],
    ["an open quote", 'a: "11\n', ["unreadable-yaml 2:1"]],
    ["an unknown tag", "a: !foo 3\n", ["unreadable-yaml 1:4"]],
  ])("says where %s stands", (_, source, expected) => {
    expect(told(source)).toEqual(expected);
    expect(readYaml(source, "job.yaml").value).toBeUndefined();
  });

  it.each([
    ["brackets", "[".repeat(500_000)],
    ["braces", `a: ${"{a: ".repeat(100_000)}`],
    ["dashes", "- ".repeat(20_000)],
  ])("refuses a file of nothing but open %s without going under", (_, source) => {
    expect(told(source)[0]).toMatch(/^too-deep 1:/);
  });

  it("refuses repeats that grow without end, and takes those that do not", () => {
    const rows = "bcdefghij".split("");
    const bomb = ["a: &a [1, 1, 1, 1, 1, 1, 1, 1, 1, 1]", ...rows.map((c, i) => grown(c, "abcdefghij"[i]!))].join("\n");
    expect(told(bomb)).toEqual(["too-much-repeated 1:1"]);
    const fair = ["a: &a [1, 1, 1, 1, 1, 1, 1, 1, 1, 1]", ...rows.slice(0, 2).map((c, i) => grown(c, "ab"[i]!))];
    expect(told(fair.join("\n"))).toEqual([]);
  });

  it("stops telling after a few mistakes of grammar, which only echo each other", () => {
    expect(told("a: b: c\n".repeat(50)).length).toBeLessThanOrEqual(5);
  });
});

function grown(name: string, of: string): string {
  return `${name}: &${name} [${Array(10).fill(`*${of}`).join(", ")}]`;
}

describe("locate", () => {
  const source = 'version: 1\na: &x {b: [1, 2]}\nc: *x\nd:\n  - 1\n  - k: 3\n    m: "x"\nempty:\n';
  const { locate } = readYaml(source, "job.yaml");
  const place = (path: readonly (string | number)[], token?: "key") => {
    const { file, line, column } = locate({ file: "job.yaml", path, ...(token && { token }) });
    return `${file}:${line}:${column}`;
  };

  it("finds values, and keys where they are asked for", () => {
    expect(place(["a", "b", 1])).toBe("job.yaml:2:15");
    expect(place(["d", 1, "m"])).toBe("job.yaml:7:8");
    expect(place(["d", 1, "m"], "key")).toBe("job.yaml:7:5");
    expect(place(["c"], "key")).toBe("job.yaml:3:1");
  });

  it("follows an alias into what it repeats", () => {
    expect(place(["c"])).toBe("job.yaml:3:4");
    expect(place(["c", "b", 1])).toBe("job.yaml:2:15");
  });

  it("gives the nearest parent where the last keys are missing", () => {
    expect(place(["d", 1, "zz"])).toBe("job.yaml:6:5");
    expect(place(["d", 9, "k"])).toBe("job.yaml:4:1");
    expect(place(["empty", "b"])).toBe("job.yaml:8:1");
    expect(place(["zz"])).toBe("job.yaml:1:1");
    expect(place([])).toBe("job.yaml:1:1");
  });
});
