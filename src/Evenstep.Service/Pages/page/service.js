// Asks the service. What it does not offer is remembered, so that it is asked for only once.
import { language } from "./texts.js";

const notThere = [404, 405, 406];
const absent = new Set();

/** Everything asked in one turn is given up when the next one begins, so that no older answer covers a newer. */
export class Turns {
  #current = new AbortController();

  next() {
    this.#current.abort();
    this.#current = new AbortController();
    return this.#current.signal;
  }
}

/** What became of a question: { json }, { blob }, { problem } or, where the service does not offer it, { absent: true }. */
export async function ask(path, body, signal, accept = "application/json") {
  const feature = `${path} ${accept}`;
  if (absent.has(feature)) {
    return { absent: true };
  }

  const response = await fetch(path, {
    method: body ? "POST" : "GET",
    headers: { Accept: accept, "Accept-Language": language(), ...(body ? { "Content-Type": "application/json" } : {}) },
    body: body && JSON.stringify(body),
    signal,
  });
  return response.ok ? contentOf(response, accept) : refusalOf(response, feature);
}

const contentOf = async (response, accept) => (accept === "application/json" ? { json: await response.json() } : { blob: await response.blob() });

async function refusalOf(response, feature) {
  const problem = await response.json().catch(() => ({ detail: `${response.status} ${response.statusText}` }));
  // With `errors`, something that was named is not there; without, the address itself.
  if (notThere.includes(response.status) && !problem.errors) {
    absent.add(feature);
    return { absent: true };
  }

  return { problem };
}
