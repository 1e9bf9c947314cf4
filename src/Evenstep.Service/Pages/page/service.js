// Asks the service. What it does not offer is asked for only once.
import { keep, kept, language } from "./texts.js";

const notThere = [404, 405, 406];
const absent = new Set();
const keyName = "evenstep-key";
let key = kept("sessionStorage", keyName);

export const hasKey = () => key !== "";

/** Until the window is closed, and for the service alone. What no key can hold is left out: blanks, mostly. */
export function useKey(text) {
  key = text.replace(/[^!-~]/g, "");
  keep("sessionStorage", keyName, key);
}

/** A new turn gives up what the last one asked: no older answer covers a newer. */
export class Turns {
  #current = new AbortController();

  next() {
    this.#current.abort();
    this.#current = new AbortController();
    return this.#current.signal;
  }
}

/** { json }, { blob }, { problem }, { unreachable }, or nothing if it was given up or is not offered. */
export async function ask(path, body, signal, accept = "application/json") {
  const feature = `${path} ${accept}`;
  if (absent.has(feature)) {
    return {};
  }

  try {
    return await send(path, body, signal, accept, feature);
  } catch {
    return { unreachable: !signal?.aborted };
  }
}

async function send(path, body, signal, accept, feature) {
  const response = await fetch(path, {
    method: body ? "POST" : "GET",
    headers: {
      Accept: accept, "Accept-Language": language(), ...(key && { Authorization: `Bearer ${key}` }), ...(body && { "Content-Type": "application/json" })
    },
    body: body && JSON.stringify(body),
    signal,
  });
  return response.ok ? contentOf(response, accept) : refusalOf(response, feature);
}

const contentOf = async (response, accept) => (accept === "application/json" ? { json: await response.json() } : { blob: await response.blob() });

async function refusalOf(response, feature) {
  const problem = await response.json().catch(() => ({ detail: `${response.status} ${response.statusText}` }));
  // With `errors` something named is not there; without, the address.
  if (notThere.includes(response.status) && !problem.errors) {
    absent.add(feature);
    return {};
  }

  return { problem };
}
