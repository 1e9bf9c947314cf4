// Judges JSON by the committed OpenAPI document: a question a line on standard input, an answer a line on standard output.
//
// Question: { "method": "post", "path": "/v1/…", "status": null | "200", "json": "…" }; without a status the request's body is judged.
// or       { "pointer": "/paths/…/schema", "json": "…" }: any schema of the document, by its JSON Pointer.
// Answer:   { "valid": true | false, "errors": "…" }
import { readFileSync } from "node:fs";
import { createInterface } from "node:readline";
import Ajv2020 from "ajv/dist/2020.js";

const documentPath = process.argv[2];
const ajv = new Ajv2020({ strict: false, allErrors: false, formats: { double: true, int32: true } });
ajv.addSchema(JSON.parse(readFileSync(documentPath, "utf8")), "document");

const judges = new Map();

for await (const line of createInterface({ input: process.stdin })) {
  process.stdout.write(`${JSON.stringify(answer(JSON.parse(line)))}\n`);
}

function answer({ method, path, status, pointer, json }) {
  let value;
  try {
    value = JSON.parse(json);
  } catch (error) {
    return { valid: false, errors: error.message };
  }

  const judge = judgeOf(pointer ?? pointerOf(method, path, status));
  const valid = judge(value);
  return { valid, errors: valid ? "" : ajv.errorsText(judge.errors) };
}

function judgeOf(pointer) {
  if (!judges.has(pointer)) {
    judges.set(pointer, ajv.compile({ $ref: `document#${pointer}` }));
  }

  return judges.get(pointer);
}

function pointerOf(method, path, status) {
  const operation = ["paths", path, method];
  const content = status === null ? [...operation, "requestBody"] : [...operation, "responses", status];
  const isGood = status === null || status.startsWith("2");
  const type = !isGood ? "application/problem+json" : path.endsWith("/batch") ? "application/x-ndjson" : "application/json";
  return [...content, "content", type, "schema"].map(step => `/${step.replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");
}
