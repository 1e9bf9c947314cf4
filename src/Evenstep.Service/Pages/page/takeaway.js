// A link, the sheet for the customer, and the request as it was sent.
import { el, replace } from "./dom.js";
import { dateText, language, numberText, say, unitText } from "./texts.js";
import { hasKey } from "./service.js";
import { button, idOf } from "./controls.js";
import { telescopeOf } from "./catalogue.js";
import { interests } from "./fields.js";

export function takeawayOf(body, answer, link) {
  return [
    el("div.buttons",
      button(say("print"), () => window.print(), { class: "main" }),
      copyButton(say("copyLink"), "link", () => link())),
    el("div", { class: "copied", "aria-live": "polite", id: idOf("copied") }),
    el("details",
      el("summary", say("forDevelopers")),
      textOf("curl", curlOf(body)),
      el("div.buttons", copyButton(say("copyCurl"), "curl.copy", () => curlOf(body))),
      textOf("answer", JSON.stringify(answer, null, 2))),
  ];
}

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

const copyButton = (label, name, text) => button(label, async () => {
  const done = await copy(text());
  document.getElementById(idOf("copied")).textContent = done ? say("copied") : "";
}, { id: idOf(name) });

/** Over plain HTTP there is no clipboard: then it is copied by hand. */
async function copy(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    const place = el("textarea", { readonly: true, rows: 3, "aria-label": say("copyByHand") }, text);
    const around = document.getElementById(idOf("copied"));
    replace(around, el("p", say("copyByHand")), place);
    place.select();
    return false;
  }
}

export function showPrintHead(state, answer, ownedNames) {
  replace(
    document.getElementById("for-print"),
    el("p.print-title", say("printTitle")),
    el("p", [
      ...answer.telescopes.map(({ name }, index) => `${name}${factsOf(state.telescopes[index])}`),
      state.age && say("printAge", { age: state.age }),
      state.wearsSpectacles && say("field.wearsSpectacles"),
      state.observes.length > 0 && interests.filter(one => state.observes.includes(one)).map(one => say(`interest.${one}`)).join(", "),
      ownedNames.length > 0 && say("printOwned", { items: ownedNames.join(", ") }),
    ].filter(Boolean).join(" · ")),
    el("p", dateText(new Date())));
}

function factsOf(telescope) {
  const listed = telescopeOf(telescope?.id);
  return listed ? ` (${numberText(listed.apertureMm)}/${numberText(listed.focalLengthMm)} mm)`
    : telescope?.id === ""
      ? ` (${telescope.apertureMm} ${unitText(telescope.apertureUnit)}, ${telescope.focalLengthMm} ${unitText(telescope.focalLengthUnit)})`
      : "";
}
