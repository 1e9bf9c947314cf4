// The power ladder, as the service draws it. It comes with a style of its own, which a page with a strict policy may not
// take in as markup; so its rules are adopted as a sheet, and only drawing is kept of the rest.
import { el } from "./dom.js";
import { say } from "./texts.js";

const drawing = new Set(["svg", "title", "desc", "g", "path", "line", "rect", "circle", "ellipse", "polyline", "polygon", "text", "tspan", "defs", "pattern", "clipPath", "use", "symbol", "marker", "mask", "linearGradient", "stop"]);

export async function ladderOf(blob) {
  const root = new DOMParser().parseFromString(await blob.text(), "image/svg+xml").documentElement;
  if (root.localName !== "svg") {
    return null;
  }

  const sheet = new CSSStyleSheet();
  sheet.replaceSync([...root.querySelectorAll("style")].map(style => style.textContent).join("\n"));
  keepDrawing(root);
  const frame = el("div", { class: "ladder" });
  const shadow = frame.attachShadow({ mode: "open" });
  shadow.adoptedStyleSheets = [sheet, ownSheet()];
  shadow.append(document.importNode(root, true));
  return el("figure", { "aria-label": say("part.ladder") }, frame);
}

function keepDrawing(node) {
  [...node.attributes].filter(({ name, value }) => /^on/i.test(name) || name === "style" || (/href$/i.test(name) && !value.startsWith("#"))).forEach(({ name }) => node.removeAttribute(name));
  [...node.children].forEach(child => (drawing.has(child.localName) ? keepDrawing(child) : child.remove()));
}

function ownSheet() {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync("svg { display: block; width: 100%; height: auto; margin: 0; }");
  return sheet;
}
