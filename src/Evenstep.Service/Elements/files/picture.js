/**
 * Reads the pictures that the service draws. A page may forbid style elements, and parsing text at all (Trusted Types), so
 * they are put together node by node; whatever does not belong into a picture is not taken in.
 */

const svg = 'http://www.w3.org/2000/svg';

const elements = new Set(['svg', 'title', 'desc', 'g', 'text', 'rect', 'circle', 'path']);
const attributes = /^(class|id|role|viewBox|x|y|width|height|rx|cx|cy|r|d|text-anchor|aria-labelledby|data-[a-z-]+)$/;

const tag = /<(\/?)([\w:-]+)((?:\s+[\w:-]+="[^"]*")*)\s*(\/?)>|[^<]+/g;
const attribute = /([\w:-]+)="([^"]*)"/g;

const named = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };

/**
 * @param {string} text a picture as the service writes it: neither comments nor CDATA
 * @returns {{ drawing: SVGSVGElement, style: string }}
 */
export function read(text) {
  const reading = { within: [document.createDocumentFragment()], style: '', isStyle: false };
  for (const match of text.matchAll(tag)) {
    take(reading, match);
  }

  return { drawing: reading.within[0].firstElementChild, style: reading.style };
}

function take(reading, [text, closes, name, given, isEmpty]) {
  const parent = reading.within.at(-1);
  if (!name) {
    reading.isStyle ? reading.style += plain(text) : parent.append(plain(text));
  } else if (name === 'style') {
    reading.isStyle = !closes;
  } else if (closes) {
    reading.within.pop();
  } else {
    const element = made(name, given);
    parent.append(element);
    isEmpty || reading.within.push(element);
  }
}

function made(name, given) {
  const element = document.createElementNS(svg, elements.has(name) ? name : 'g');
  for (const [, attributeName, value] of given.matchAll(attribute)) {
    if (attributes.test(attributeName)) {
      element.setAttribute(attributeName, plain(value));
    }
  }

  return element;
}

function plain(text) {
  return text.replace(/&(?:(\w+)|#x([0-9A-Fa-f]+));/g, (_, name, code) => name ? named[name] ?? '' : String.fromCodePoint(parseInt(code, 16)));
}
