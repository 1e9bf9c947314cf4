// The ladder that the service draws. Its rules are adopted as a sheet: the policy lets no style in as markup.
import { el } from "./dom.js";
import { say } from "./texts.js";

const fitting = "svg { display: block; width: 100%; height: auto; max-height: var(--most, none); }";

export async function ladderOf(blob) {
  const rules = [];
  const markup = (await blob.text()).replace(/<style>(.*?)<\/style>/gs, (_, text) => rules.push(text) && "");
  const root = new DOMParser().parseFromString(markup, "image/svg+xml").documentElement;
  if (root.localName !== "svg") {
    return null;
  }

  root.querySelectorAll("script, style, foreignObject, a").forEach(node => node.remove());
  const frame = el("div.ladder");
  const shadow = frame.attachShadow({ mode: "open" });
  shadow.adoptedStyleSheets = [sheetOf(rules.join("")), sheetOf(fitting)];
  shadow.append(document.importNode(root, true));
  return el("figure", { "aria-label": say("part.ladder") }, frame);
}

function sheetOf(text) {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(text);
  return sheet;
}
