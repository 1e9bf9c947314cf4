// The request as it was sent, and its answer.
import { el } from "./dom.js";
import { language, say } from "./texts.js";
import { hasKey } from "./service.js";
import { copyButton, idOf } from "./controls.js";

export const requestAndAnswer = (body, answer) => [
  ...textOf("curl", curlOf(body)),
  el("div.buttons", copyButton(say("copyCurl"), "curl.copy", () => curlOf(body))),
  ...textOf("answer", JSON.stringify(answer, null, 2)),
];

const textOf = (name, text) => [
  el("label", { for: idOf(name) }, say(`developer.${name}`)),
  el("textarea", { id: idOf(name), readonly: true, rows: 9, spellcheck: "false" }, text),
];

const curlOf = body => [
  `curl -s ${location.origin}/v1/recommendations`,
  "-H 'Content-Type: application/json'",
  `-H 'Accept-Language: ${language()}'`,
  ...(hasKey() ? ['-H "Authorization: Bearer $EVENSTEP_KEY"'] : []),
  `-d '${JSON.stringify(body, null, 2).replaceAll("'", "'\\''")}'`,
].join(" \\\n  ");
